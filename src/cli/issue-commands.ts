import { existsSync, readFileSync } from "node:fs";
import { assumptionFiles, readAssumptions } from "../assumptions/load.js";
import { type IssueDraft, makeIssue } from "../issue/make-issue.js";
import { verifyIssue } from "../issue/verify.js";
import { assumptionsFolder } from "../report/assets.js";
import { createPrinter } from "../report/printer.js";
import { toldOdds } from "../report/told-odds.js";
import { databaseFile, storeConnection } from "../store/connection.js";
import { dataFolder } from "../store/data-folder.js";
import { issueStore } from "../store/issues.js";
import { studyStore } from "../store/studies.js";
import { runStudy } from "../study/compute.js";
import { InputError } from "../study/problems.js";
import { readStudyText } from "../study/read.js";
import { issueReport } from "../web/issue-desk.js";
import { studyShelf } from "../web/study-shelf.js";
import { drawnOdds } from "./odds-command.js";
import { writeWhole } from "./write-whole.js";

type Print = (text: string) => void;

export interface IssueArguments {
  readonly out: string;
  readonly author: string;
  readonly note: string;
  readonly withOdds: boolean;
}

/** Freezes the report on a kept study as its next issue, and writes the PDF. */
export async function issueCommand(
  id: string,
  { out, author, note, withOdds }: IssueArguments,
  print: Print,
): Promise<void> {
  const connection = storeConnection(dataFolder());
  const printer = createPrinter();
  const now = () => new Date();
  try {
    const files = assumptionFiles(assumptionsFolder);
    const assumptions = readAssumptions(files);
    const shelf = studyShelf(studyStore(connection), assumptions, now);
    const entry = shelf.find(id);
    if (!entry || entry.isExample || entry.state === "deleted") throw unknownStudy(id);
    const run = runStudy(readStudyText(entry.text, entry.fileName), assumptions);
    printer.warm();
    const told = withOdds ? toldOdds(run, await drawnOdds(run.document, assumptions)) : undefined;
    const make = (draft: IssueDraft) => makeIssue(draft, { run, told, files }, printer);
    const issue = await issueReport({ entry, author, note }, { issues: issueStore(connection), make, now });
    writeWhole(out, issue.pdf);
    print(`Issued report ${issue.number} on revision ${issue.revision} of ${issue.studyName}.`);
    print(`Wrote ${out}; digest ${issue.digest}`);
  } finally {
    await printer.close();
    connection.close();
  }
}

/** Computes an issued report again and prints what was found. @returns whether it stands */
export async function verifyCommand(path: string, print: Print): Promise<boolean> {
  const pdf = readPdf(path);
  const file = databaseFile(dataFolder());
  const connection = existsSync(file) ? storeConnection(dataFolder()) : undefined;
  try {
    const issues = connection && issueStore(connection);
    const found = await verifyIssue(pdf, {
      draw: drawnOdds,
      ...(issues ? { kept: (digest: string) => issues.withDigest(digest)?.pdf } : {}),
    });
    print([found.answer, ...found.sentences].join("\n"));
    for (const { place, issued, recomputed } of found.differences) {
      print(`  ${place}: issued ${issued}, computed again ${recomputed}`);
    }
    return found.stands;
  } finally {
    connection?.close();
  }
}

function readPdf(path: string): Uint8Array {
  if (existsSync(path)) return readFileSync(path);
  throw new InputError("the command", [
    { path: "FILE", found: `no "${path}"`, allowed: "a PDF", remedy: "Check the path." },
  ]);
}

const unknownStudy = (id: string) =>
  new InputError("the command", [
    {
      path: "STUDY-ID",
      found: `"${id}"`,
      allowed: "the id of a kept study that is not deleted",
      remedy: "The list command tells ids; the import command keeps a study file.",
    },
  ]);
