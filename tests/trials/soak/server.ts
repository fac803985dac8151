import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { projectRoot } from "#product/project-root.js";

/** A server of its own, in a process of its own. */
export interface SoakedServer {
  readonly base: string;
  /** Memory of the server's process without its browser, MB. */
  readonly megabytes: () => number;
  /** Processor time that the process has had, seconds. */
  readonly processorSeconds: () => number;
  /** @returns the exit code */
  readonly stop: () => Promise<number | null>;
}

export async function startServer(folder: string, port: number): Promise<SoakedServer> {
  const script = join(projectRoot, "dist", "web", "serve.js");
  // As `npm start` does.
  const child: ChildProcess = spawn(process.execPath, ["--single-threaded-gc", script], {
    env: { ...process.env, RAMP_AND_RACK_DATA: folder, PORT: String(port) },
    stdio: ["ignore", "pipe", "inherit"],
  });
  await new Promise<void>((resolve, reject) => {
    child.stdout?.on("data", (bytes: Buffer) => {
      if (bytes.toString().includes("Ramp & Rack is at")) resolve();
    });
    child.once("exit", (code) => reject(new Error(`the server ended with ${code}`)));
  });
  return {
    base: `http://127.0.0.1:${port}`,
    megabytes: () => residentMegabytes(child.pid),
    processorSeconds: () => processorSeconds(child.pid),
    stop: async () => {
      const ended = once(child, "exit");
      child.kill("SIGTERM");
      await ended;
      return child.exitCode;
    },
  };
}

/** From Linux's own account of the process; other systems have none to read. */
function residentMegabytes(pid: number | undefined): number {
  try {
    const kilobytes = /VmRSS:\s+(\d+) kB/.exec(readFileSync(`/proc/${pid}/status`, "utf8"))?.[1];
    return Number(kilobytes) / 1024;
  } catch {
    return Number.NaN;
  }
}

/** Of all its threads, from Linux's account: in hundredths of a second after the name in brackets. */
function processorSeconds(pid: number | undefined): number {
  try {
    const [, fields = ""] = /\) (.*)$/.exec(readFileSync(`/proc/${pid}/stat`, "utf8").trim()) ?? [];
    const [user, system] = fields.split(" ").slice(11, 13).map(Number);
    return ((user ?? Number.NaN) + (system ?? Number.NaN)) / 100;
  } catch {
    return Number.NaN;
  }
}
