import { type ChildProcess, spawn } from "node:child_process";
import { join } from "node:path";
import type { Kept } from "../issue/authenticity.js";
import type { Claim, Verification } from "../issue/verify.js";
import { projectRoot } from "../project-root.js";
import type { FromProcess, ToProcess } from "./verify-messages.js";

/** The compiled script, also when this file is run as it is written. */
const script = join(projectRoot, "dist", "app", "verify-process.js");

interface ApartSettings {
  readonly longestSeconds: number;
  /** Of address space, which includes what the engine only reserves. */
  readonly mostMegabytes: number;
  readonly withOdds: boolean;
}

/** Far more than reading and computing a report takes without its odds. */
const usualApart: ApartSettings = { longestSeconds: 60, mostMegabytes: 3072, withOdds: false };

/**
 * Verifies a file, which may be anybody's, in a process of its own with limits of memory and time.
 * @param kept what is kept here of what the file claims to be; of one that claims nothing, of its bytes
 */
export async function verifyApart(
  pdf: Uint8Array,
  kept: (claim: Claim | undefined) => Kept,
  settings: Partial<ApartSettings> = {},
): Promise<Verification> {
  const { longestSeconds, mostMegabytes, withOdds } = { ...usualApart, ...settings };
  const child = start(mostMegabytes);
  const clock = setTimeout(() => child.kill("SIGKILL"), longestSeconds * 1000);
  try {
    const verification = await conversation(child, { kind: "file", pdf, withOdds }, kept);
    return verification ?? beyondLimits(kept(undefined), settings);
  } finally {
    clearTimeout(clock);
    child.kill("SIGKILL");
  }
}

/** A shell sets the limit and becomes the program. Where there is none, the limit is that of the engine's own heap. */
function start(mostMegabytes: number): ChildProcess {
  const node = [process.execPath, `--max-old-space-size=${mostMegabytes / 4}`, script];
  const limited = ["sh", "-c", `ulimit -v ${mostMegabytes * 1024} 2>/dev/null; exec "$@"`, "sh", ...node];
  const [command = "", ...rest] = process.platform === "win32" ? node : limited;
  return spawn(command, rest, {
    // Its faults are of the file, and would fill the log of the server.
    stdio: ["ignore", "ignore", "ignore", "ipc"],
    serialization: "advanced",
    env: { PATH: process.env.PATH },
  });
}

/** Undefined where the process ended before it answered. */
function conversation(
  child: ChildProcess,
  file: ToProcess,
  kept: (claim: Claim | undefined) => Kept,
): Promise<Verification | undefined> {
  return new Promise((resolve, reject) => {
    // The process may end while it is written to; its end is told by "exit".
    const send = (message: ToProcess) => child.send(message, () => undefined);
    child.on("error", reject);
    child.on("exit", () => resolve(undefined));
    child.on("message", (message: FromProcess) => {
      if (message.kind === "verification") return resolve(message.verification);
      try {
        send({ kind: "kept", kept: kept(message.claim) });
      } catch (error) {
        reject(error);
      }
    });
    send(file);
  });
}

function beyondLimits({ isSame }: Kept, settings: Partial<ApartSettings>): Verification {
  const { longestSeconds, mostMegabytes } = { ...usualApart, ...settings };
  const limits = `${longestSeconds} seconds and ${mostMegabytes.toLocaleString("en-US")} MB`;
  return {
    standing: isSame ? "issued here" : "unknown",
    stands: isSame,
    answer: isSame ? "Issued here, unaltered." : "Unknown. This file is no issued report of this program.",
    sentences: [
      isSame
        ? `It could not be computed again within ${limits}; the command “verify” has more time.`
        : `Reading it failed, or would have needed more than ${limits}.`,
    ],
    differences: [],
  };
}
