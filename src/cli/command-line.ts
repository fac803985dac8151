import { AssumptionError } from "../assumptions/load.js";
import { SigningKeyError } from "../issue/signing-key.js";
import { OddsError } from "../odds/pool.js";
import { BrowserError } from "../report/print/browser.js";
import { TooWideError } from "../report/print/pdf.js";
import { DamagedIssueError, DamagedRevisionError, StoreError } from "../store/errors.js";
import { InputError } from "../study/reading/problems.js";
import { readArguments, UsageError } from "./arguments.js";
import { commandCalled } from "./command-table.js";

const usage = `Usage:
  ramp-and-rack start [SHORT] --out STUDY       write a full study from a few facts: of a short file, or as asked;
                                                typical values stand for the rest
  ramp-and-rack start --example --out SHORT     write a short file to begin with
  ramp-and-rack check STUDY                     is the study complete and consistent?
  ramp-and-rack compare STUDY [--json]          draw the study's futures, compute the comparison and print it
  ramp-and-rack report STUDY --out FILE         write the report, FILE ending in .pdf or .html
                [--paper letter|a4]             with the odds of its futures
                [--board-part]                  without appendices
  ramp-and-rack method [STUDY] --out FILE       write the method behind every report: relations, examples, sources;
                [--paper letter|a4]             with a STUDY, its intake and plant worked step by step as well
  ramp-and-rack odds STUDY                      draw the study's uncertain quantities: costs as they come about
                [--futures N] [--seed S]        and chances; as many workers as the machine has processors, at
                [--workers K] [--json]          most 4, unless K is given
  ramp-and-rack search STUDY                    the program that fits: efficient programs, the best within limits,
                [--workers K] [--json]          the next step, when to begin and to end
  ramp-and-rack list                            the kept studies with their ids
  ramp-and-rack import FILE [--author NAME]     keep a study file, to the byte, complete or not
  ramp-and-rack export STUDY-ID --out FILE      write a kept study's file, of its latest revision unless --revision N
  ramp-and-rack backup FILE                     copy all that is kept to FILE, also while the server runs
  ramp-and-rack restore FILE                    put that content back; what was kept until then is set aside
  ramp-and-rack remove STUDY-ID --permanently   remove a deleted study with all its revisions
  ramp-and-rack access add NAME --role read|edit
                                                make an access key for NAME and print it once; with any key set,
                                                everyone signs in
  ramp-and-rack access list                     who has a key, and for what
  ramp-and-rack access remove NAME              take a key back and sign its owner out
  ramp-and-rack forms STUDY --out FOLDER        workbook, tables as CSV, charts, and one page for a public
                                                meeting
  ramp-and-rack issue STUDY-ID --out FILE.pdf   freeze the report on a kept study as its next issue
                [--author NAME] [--note TEXT]
  ramp-and-rack verify FILE.pdf                 was it issued, by whom, is it unaltered, do its figures match?
  ramp-and-rack schema                          print the JSON Schema of a study
  ramp-and-rack demo                            the first example: comparison, and report as PDF

STUDY is a YAML or JSON file. Studies are kept in the folder that RAMP_AND_RACK_DATA names, or else in data. Exit code 0: done; 1: a fault of the machine; 2: something to correct.`;

/** Does what a command line asks for. What is wrong is told on the error stream. @returns the exit code */
export async function commandLine(args: readonly string[]): Promise<number> {
  try {
    return await runCommand(args);
  } catch (error) {
    return exitCode(error);
  }
}

async function runCommand(args: readonly string[]): Promise<number> {
  const { values, positionals } = readArguments(args);
  const [command, operand, name] = positionals;
  if (command === undefined || (values.help && positionals.length === 0)) {
    console.log(usage);
    return 0;
  }
  const done = await commandCalled(command)(operand, values, name);
  return done === "not so" ? 2 : 0;
}

function exitCode(error: unknown): number {
  if (error instanceof InputError || error instanceof TooWideError) {
    console.error(error.message);
    return 2;
  }
  if (error instanceof UsageError) {
    console.error(`${error.message}\n\n${usage}`);
    return 2;
  }
  const isKnown =
    error instanceof AssumptionError ||
    error instanceof BrowserError ||
    error instanceof DamagedIssueError ||
    error instanceof DamagedRevisionError ||
    error instanceof OddsError ||
    error instanceof SigningKeyError ||
    error instanceof StoreError;
  const isSystem = error instanceof Error && "code" in error;
  console.error(isKnown || isSystem ? error.message : error);
  return 1;
}
