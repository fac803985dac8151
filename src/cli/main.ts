#!/usr/bin/env node
import { parseArgs } from "node:util";
import { AssumptionError } from "../assumptions/load.js";
import { BrowserError } from "../report/browser.js";
import { InputError } from "../study/problems.js";
import { check, compareCommand, demo, report, schema } from "./commands.js";

const usage = `Usage:
  ramp-and-rack check STUDY                     is the study complete and consistent?
  ramp-and-rack compare STUDY [--json]          compute the comparison and print it
  ramp-and-rack report STUDY --out FILE         write the report, FILE ending in .pdf or .html
                [--paper letter|a4]
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
      return report(required(study, "STUDY"), required(values.out, "--out FILE"), paper(values.paper), print);
    case "schema":
      return schema(print);
    case "demo":
      return demo(print);
    default:
      if (values.help || command === undefined) return print(usage);
      throw new UsageError(`Unknown command "${command}". Allowed: check, compare, report, schema, demo.`);
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

function exitCode(error: unknown): number {
  if (error instanceof InputError) {
    console.error(error.message);
    return 2;
  }
  if (error instanceof UsageError) {
    console.error(`${error.message}\n\n${usage}`);
    return 2;
  }
  const isKnown = error instanceof AssumptionError || error instanceof BrowserError;
  const isSystem = error instanceof Error && "code" in error;
  console.error(isKnown || isSystem ? error.message : error);
  return 1;
}

try {
  await runCommand(process.argv.slice(2));
} catch (error) {
  process.exitCode = exitCode(error);
}
