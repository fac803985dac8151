import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { vi } from "vitest";
import { commandLine } from "../../src/cli/command-line.js";
import { projectRoot } from "../../src/project-root.js";

/** What a command prints and its exit code, in this process. */
export async function run(...args: string[]) {
  const printed: Record<"log" | "error", string[]> = { log: [], error: [] };
  const spies = (["log", "error"] as const).map((name) =>
    vi.spyOn(console, name).mockImplementation((text: unknown) => {
      printed[name].push(`${text}\n`);
    }),
  );
  try {
    const status = await commandLine(args);
    return { status, stdout: printed.log.join(""), stderr: printed.error.join("") };
  } finally {
    for (const spy of spies) spy.mockRestore();
  }
}

interface Started {
  readonly cwd?: string;
  /** What is typed on its input. */
  readonly input?: string;
  readonly environment?: Readonly<Record<string, string>>;
}

/** The same of the program itself, in a process of its own, whose streams are no terminal. */
export function runProgram(args: readonly string[], { environment, ...settings }: Started = {}) {
  const program = [join(projectRoot, "dist", "cli", "main.js"), ...args];
  const env = { ...process.env, ...environment };
  const { status, stdout, stderr } = spawnSync(process.execPath, program, {
    encoding: "utf8",
    env,
    ...settings,
  });
  return { status, stdout, stderr };
}
