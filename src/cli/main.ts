#!/usr/bin/env node
import { parseArgs } from "node:util";
import { AssumptionError } from "../assumptions/load.js";
import { OddsError, usualWorkers } from "../odds/pool.js";
import { BrowserError } from "../report/browser.js";
import { InputError } from "../study/problems.js";
import { leastFutures, mostFutures } from "../study/uncertainty-schema.js";
import { check, compareCommand, demo, report, schema } from "./commands.js";
import { type OddsArguments, oddsCommand } from "./odds-command.js";

const usage = `Usage:
  ramp-and-rack check STUDY                     is the study complete and consistent?
  ramp-and-rack compare STUDY [--json]          compute the comparison and print it
  ramp-and-rack report STUDY --out FILE         write the report, FILE ending in .pdf or .html
                [--paper letter|a4]             and draw its futures first, unless --without-odds is given
                [--without-odds]
  ramp-and-rack odds STUDY                      draw the study's uncertain quantities: costs as they come about
                [--futures N] [--seed S]        and chances; as many workers as the machine has processors, at
                [--workers K] [--json]          most 4, unless K is given
  ramp-and-rack schema                          print the JSON Schema of a study
  ramp-and-rack demo                            the first example: comparison, and report as PDF

STUDY is a YAML or JSON file. Exit code 0: done; 1: a fault of the machine; 2: something to correct.`;

/** The command line was not understood: for the person who typed it. */
class UsageError extends Error {}

const print = (text: string) => console.log(text);

async function runCommand(args: readonly string[]): Promise<void> {
  const { values, positionals } = readArguments(args);
  const [command, study] = positionals;
  switch (command) {
    case "check":
      return check(required(study, "STUDY"), print);
    case "compare":
      return compareCommand(required(study, "STUDY"), values.json ?? false, print);
    case "report":
      return report(
        required(study, "STUDY"),
        {
          out: required(values.out, "--out FILE"),
          paper: paper(values.paper),
          withOdds: !values["without-odds"],
        },
        print,
      );
    case "odds":
      return oddsCommand(required(study, "STUDY"), oddsArguments(values), print);
    case "schema":
      return schema(print);
    case "demo":
      return demo(print);
    default:
      if (values.help || command === undefined) return print(usage);
      throw new UsageError(
        `Unknown command "${command}". Allowed: check, compare, report, odds, schema, demo.`,
      );
  }
}

function readArguments(args: readonly string[]) {
  try {
    return parseArgs({
      args: [...args],
      allowPositionals: true,
      options: {
        json: { type: "boolean" },
        out: { type: "string" },
        paper: { type: "string" },
        futures: { type: "string" },
        seed: { type: "string" },
        workers: { type: "string" },
        "without-odds": { type: "boolean" },
        help: { type: "boolean", short: "h" },
      },
    });
  } catch (error) {
    throw new UsageError(error instanceof Error ? error.message : String(error));
  }
}

function required(value: string | undefined, name: string): string {
  if (value === undefined) throw new UsageError(`${name} is missing.`);
  return value;
}

function paper(value: string | undefined): "letter" | "a4" | undefined {
  if (value === undefined || value === "letter" || value === "a4") return value;
  throw new UsageError(`--paper is "${value}"; allowed: letter or a4.`);
}

function oddsArguments(values: ReturnType<typeof readArguments>["values"]): OddsArguments {
  return {
    futures: whole("--futures", values.futures, { least: leastFutures, most: mostFutures }),
    seed: whole("--seed", values.seed, { least: 0, most: Number.MAX_SAFE_INTEGER }),
    workers: whole("--workers", values.workers, { least: 1, most: mostWorkersAsked }) ?? usualWorkers(),
    asJson: values.json ?? false,
  };
}

const mostWorkersAsked = 64;

function whole(
  name: string,
  text: string | undefined,
  { least, most }: { readonly least: number; readonly most: number },
): number | undefined {
  if (text === undefined) return undefined;
  const value = Number(text);
  if (/^\d+$/.test(text) && value >= least && value <= most) return value;
  throw new UsageError(`${name} is "${text}"; allowed: a whole number from ${least} to ${most}.`);
}

function exitCode(error: unknown): number {
  if (error instanceof InputError) {
    console.error(error.message);
    return 2;
  }
  if (error instanceof UsageError) {
    console.error(`${error.message}\n\n${usage}`);
    return 2;
  }
  const isKnown =
    error instanceof AssumptionError || error instanceof BrowserError || error instanceof OddsError;
  const isSystem = error instanceof Error && "code" in error;
  console.error(isKnown || isSystem ? error.message : error);
  return 1;
}

try {
  await runCommand(process.argv.slice(2));
} catch (error) {
  process.exitCode = exitCode(error);
}
