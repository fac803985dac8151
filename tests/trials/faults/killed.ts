import { type ChildProcess, spawn } from "node:child_process";
import { createHash } from "node:crypto";
import { once } from "node:events";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { projectRoot } from "#product/project-root.js";
import { checkWhole } from "#product/store/backup.js";
import { storeConnection } from "#product/store/connection.js";
import { issueStore } from "#product/store/issues.js";
import { studyStore } from "#product/store/studies.js";

/** What has been acknowledged, and what may be found beside it. */
interface Acknowledged {
  readonly revisions: Map<number, string>;
  readonly issues: Map<number, string>;
  /** A restore that was begun and not acknowledged: the latest revision that it would leave. */
  restoring: number | undefined;
}

export interface KillReport {
  readonly kills: number;
  readonly saves: number;
  readonly issues: number;
  readonly restores: number;
  /** Empty where all that was acknowledged is there. */
  readonly lost: readonly string[];
}

/** Kills writing processes at random moments; after each kill opens the store and looks for all that was acknowledged. */
export async function killWriters(
  folder: string,
  {
    kills,
    random,
    longestMilliseconds,
  }: { kills: number; random: () => number; longestMilliseconds: number },
): Promise<KillReport> {
  const known: Acknowledged = { revisions: new Map(), issues: new Map(), restoring: undefined };
  const counts = { saves: 0, issues: 0, restores: 0 };
  const lost: string[] = [];
  for (let round = 1; round <= kills; round++) {
    const lines = await linesUntilKilled(folder, round, random() * longestMilliseconds);
    for (const line of lines) take(line, known, counts);
    lost.push(...missing(folder, known).map((each) => `after kill ${round}: ${each}`));
  }
  return { kills, ...counts, lost };
}

const savedOnceReady = /^ready\nsaved .*\n/m;

/** @param milliseconds that it is left alive after its first save, which a busy machine would else have no time for */
async function linesUntilKilled(folder: string, round: number, milliseconds: number): Promise<string[]> {
  const script = join(projectRoot, "out", "trials", "faults", "writer.js");
  const child: ChildProcess = spawn(process.execPath, [script, folder, String(round)], {
    stdio: ["ignore", "pipe", "inherit"],
  });
  let text = "";
  const hasSaved = new Promise<void>((resolve) => {
    child.stdout?.on("data", (bytes: Buffer) => {
      text += bytes.toString();
      if (savedOnceReady.test(text)) resolve();
    });
  });
  const closed = once(child, "close");
  await Promise.race([hasSaved, closed]);
  await pause(milliseconds);
  child.kill("SIGKILL");
  await closed;
  return text.split("\n").filter((line) => line !== "");
}

function take(
  line: string,
  known: Acknowledged,
  counts: { saves: number; issues: number; restores: number },
): void {
  const [what, number = "", digest = ""] = line.split(" ");
  if (what === "saved") {
    known.revisions.set(Number(number), digest);
    counts.saves += 1;
  } else if (what === "issued") {
    known.issues.set(Number(number), digest);
    counts.issues += 1;
  } else if (what === "restoring") known.restoring = Number(number);
  else if (what === "restored") {
    known.revisions.delete(Number(number) + 1);
    known.restoring = undefined;
    counts.restores += 1;
  }
}

const digestOf = (text: string): string => createHash("sha256").update(text).digest("hex").slice(0, 16);

/** What is not as acknowledged; what was written without an answer is taken as acknowledged from now on. */
function missing(folder: string, known: Acknowledged): string[] {
  const connection = storeConnection(folder);
  try {
    connection.read(checkWhole);
    const store = studyStore(connection);
    const latest = store.latest("lake")?.revision ?? 0;
    if (known.restoring === latest) known.revisions.delete(latest + 1);
    known.restoring = undefined;
    const revisions = [...known.revisions].filter(
      ([revision, digest]) => digestOf(store.revision("lake", revision)?.text ?? "") !== digest,
    );
    const issues = issueStore(connection);
    const gone = [...known.issues].filter(
      ([number, digest]) => issues.find("lake", number)?.digest !== digest,
    );
    const kept = store.revision("lake", latest);
    if (kept) known.revisions.set(latest, digestOf(kept.text));
    return [
      ...revisions.map(([revision]) => `revision ${revision} of ${latest} is not as acknowledged`),
      ...gone.map(([number]) => `issue ${number} is not as acknowledged`),
    ];
  } catch (error) {
    return [String(error)];
  } finally {
    connection.close();
  }
}
