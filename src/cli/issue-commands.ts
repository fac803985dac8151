import { existsSync, readFileSync, statSync } from "node:fs";
import { type IssueParts, issueReport } from "../app/issuing.js";
import { keptOf } from "../app/kept-reports.js";
import { studiesOf } from "../app/studies.js";
import { verifyApart } from "../app/verify-apart.js";
import { assumptionFiles, readAssumptions } from "../assumptions/load.js";
import { withAgencyFile } from "../assumptions/read-agency.js";
import { fileLimits } from "../issue/file-limits.js";
import { makeIssue } from "../issue/make-issue.js";
import { signingKeyIn } from "../issue/signing-key.js";
import { assumptionsFolder } from "../report/document/assets.js";
import { printableOdds } from "../report/odds/printed-odds.js";
import { createPrinter } from "../report/print/printer.js";
import { databaseFile, storeConnection } from "../store/connection.js";
import { dataFolder } from "../store/data-folder.js";
import { issueStore } from "../store/issues.js";
import { inMemory } from "../store/open-database.js";
import { studyStore } from "../store/studies.js";
import { InputError } from "../study/reading/problems.js";
import { readStudyText } from "../study/reading/read.js";
import { runWithOdds } from "./odds-command.js";
import { writeWhole } from "./write-whole.js";

type Print = (text: string) => void;

interface IssueArguments {
  readonly out: string;
  readonly author: string;
  readonly note: string;
}

/** Freezes the report on a kept study as its next issue, and writes the PDF. */
export async function issueCommand(
  id: string,
  { out, author, note }: IssueArguments,
  print: Print,
): Promise<void> {
  const connection = storeConnection(dataFolder());
  const printer = createPrinter();
  const now = () => new Date();
  try {
    const files = withAgencyFile(assumptionFiles(assumptionsFolder), dataFolder());
    const assumptions = readAssumptions(files);
    const studies = studiesOf(studyStore(connection), () => assumptions, now);
    const entry = studies.find(id);
    if (!entry || entry.isExample || entry.state === "deleted") throw unknownStudy(id);
    const document = readStudyText(entry.text, entry.fileName);
    printer.warm();
    const { run, odds } = await runWithOdds(document, assumptions);
    const printedOdds = printableOdds(run, odds);
    const make: IssueParts["make"] = (draft, sign) =>
      makeIssue(draft, { run, printedOdds, files }, { print: printer.print, sign });
    const parts = { issues: issueStore(connection), key: signingKeyIn(dataFolder(), now), make, now };
    const issue = await issueReport({ entry, author, note }, parts);
    writeWhole(out, issue.pdf);
    const boardOut = out.replace(/(\.pdf)?$/i, "-board-part.pdf");
    if (issue.boardPdf) writeWhole(boardOut, issue.boardPdf);
    print(`Issued report ${issue.number} on revision ${issue.revision} of ${issue.studyName}.`);
    print(`Wrote ${out}, and the board's part as ${boardOut}; digest ${issue.digest}`);
    print(`Signed with the key ${parts.key.fingerprint()}.`);
  } finally {
    await printer.close();
    connection.close();
  }
}

/** Prints what a file is, and whether an issued report's figures match. @returns whether it stands */
export async function verifyCommand(path: string, print: Print): Promise<boolean> {
  const pdf = readPdf(path);
  const connection = storeConnection(existsSync(databaseFile(dataFolder())) ? dataFolder() : inMemory);
  try {
    const key = signingKeyIn(dataFolder(), () => new Date());
    const found = await verifyApart(pdf, keptOf(issueStore(connection), key, pdf), withTime);
    print([found.answer, ...found.sentences].join("\n"));
    for (const { place, issued, recomputed } of found.differences) {
      print(`  ${place}: issued ${issued}, computed again ${recomputed}`);
    }
    return found.stands;
  } finally {
    connection.close();
  }
}

/** The odds are drawn again; nobody else waits meanwhile. */
const withTime = { withOdds: true, longestSeconds: 3600, mostMegabytes: 4096 };

function readPdf(path: string): Uint8Array {
  const found = statSync(path, { throwIfNoEntry: false });
  if (found?.isFile() && found.size <= fileLimits.bytes) return readFileSync(path);
  const isThere = found?.isFile() === true;
  throw new InputError("the command", [
    {
      path: "FILE",
      found: isThere ? `${path} of ${found.size.toLocaleString("en-US")} bytes` : `no file "${path}"`,
      allowed: `a PDF of at most ${fileLimits.bytes.toLocaleString("en-US")} bytes`,
      remedy: isThere ? "No issued report is as large: give the PDF as it was issued." : "Check the path.",
    },
  ]);
}

const unknownStudy = (id: string) =>
  new InputError("the command", [
    {
      path: "STUDY-ID",
      found: `"${id}"`,
      allowed: "the id of a kept study that is not deleted",
      remedy: "The list command shows ids; the import command keeps a study file.",
    },
  ]);
