import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";

/** Keeps a processor busy until the process of that number is no longer its parent: a loop outlives no trial, however that ends. */
const loop = `const parent = Number(process.argv[1]);
for (;;) {
  for (let count = 0; count < 1e7; count += 1);
  if (process.ppid !== parent) process.exit();
}`;

export interface BusyLoops {
  readonly pids: readonly number[];
  readonly end: () => Promise<void>;
}

/** Processes that want a processor each and do nothing with it. */
export function startLoops(count: number): BusyLoops {
  const children = Array.from({ length: count }, () =>
    spawn(process.execPath, ["-e", loop, String(process.pid)], { stdio: "ignore" }),
  );
  return {
    pids: children.flatMap(({ pid }) => pid ?? []),
    end: async () => {
      await Promise.all(children.map(ended));
    },
  };
}

async function ended(child: ChildProcess): Promise<void> {
  if (child.exitCode !== null || child.signalCode !== null) return;
  const closed = once(child, "close");
  child.kill("SIGKILL");
  await closed;
}
