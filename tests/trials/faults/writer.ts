import { createHash } from "node:crypto";
import { writeSync } from "node:fs";
import { join } from "node:path";
import { backUp } from "#product/store/backup.js";
import { databaseFile, storeConnection } from "#product/store/connection.js";
import { issueStore, type KeptIssue } from "#product/store/issues.js";
import { restore } from "#product/store/restore.js";
import { studyStore } from "#product/store/studies.js";

/**
 * A process that saves, issues, backs up and restores until it is killed. A line is written once a change was
 * acknowledged, and one before a restore, which may be found done or not done.
 */
const [, , folder = "", first = "1"] = process.argv;
const tell = (...words: readonly (string | number)[]) => writeSync(1, `${words.join(" ")}\n`);
const digestOf = (text: string): string => createHash("sha256").update(text).digest("hex").slice(0, 16);

const written = (text: string) =>
  ({
    id: "lake",
    name: "Lake",
    savedAt: new Date().toISOString(),
    author: "",
    note: "",
    origin: "upload",
    fileName: "lake.yaml",
    text,
  }) as const;

const textOf = (round: number, step: number) =>
  `# ${round}.${step}\n${"level: 1,240 ft\n".repeat(2000 + 100 * step)}`;

const issueOf = (number: number, revision: number, text: string): KeptIssue => ({
  ...{ studyId: "lake", number, issuedAt: new Date().toISOString(), author: "", note: "", revision },
  ...{ studyName: "Lake", engineVersion: "0", seed: null, digest: digestOf(`${number} ${text}`) },
  ...{
    fileName: "lake.yaml",
    studyText: text,
    assumptions: "{}",
    figures: "{}",
    pdf: Buffer.from(text),
    boardPdf: null,
  },
});

async function write(round: number): Promise<void> {
  const connection = storeConnection(folder);
  const store = studyStore(connection);
  const issues = issueStore(connection);
  if (!store.latest("lake")) tell("saved", store.create(written("start")).revision, digestOf("start"));
  tell("ready");
  for (let step = 1; ; step++) {
    const text = textOf(round, step);
    const expected = store.latest("lake")?.revision ?? 0;
    tell("saved", store.save({ ...written(text), expected }).revision, digestOf(text));
    const number = (issues.list("lake")[0]?.number ?? 0) + 1;
    if (issues.keep(issueOf(number, expected + 1, text)))
      tell("issued", number, digestOf(`${number} ${text}`));
    if (step % 2 === 0) await restoreEarlier(round, step);
  }
}

/** Backs up, saves once more, and puts the backup in place again. */
async function restoreEarlier(round: number, step: number): Promise<void> {
  const connection = storeConnection(folder);
  const store = studyStore(connection);
  const backup = join(folder, "backup.sqlite");
  await backUp(databaseFile(folder), backup);
  const kept = store.latest("lake")?.revision ?? 0;
  const text = `${textOf(round, step)}more\n`;
  tell("saved", store.save({ ...written(text), expected: kept }).revision, digestOf(text));
  tell("restoring", kept);
  await restore(backup, databaseFile(folder), new Date());
  tell("restored", kept);
  connection.close();
}

await write(Number(first));
