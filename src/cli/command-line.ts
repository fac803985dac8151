import { AssumptionError } from "../assumptions/load.js";
import { SigningKeyError } from "../issue/signing-key.js";
import { OddsError } from "../odds/pool.js";
import { BrowserError } from "../report/print/browser.js";
import { TooWideError } from "../report/print/pdf.js";
import { DamagedIssueError, DamagedRevisionError, StoreError } from "../store/errors.js";
import { InputError } from "../study/reading/problems.js";
import { readArguments, UsageError } from "./arguments.js";
import { commandCalled } from "./command-table.js";
import { helpOn, usage } from "./usage.js";

/** Does what a command line asks for. What is wrong is told on the error stream. @returns the exit code */
export async function commandLine(args: readonly string[]): Promise<number> {
  try {
    return await runCommand(args);
  } catch (error) {
    return exitCode(error, args[0]);
  }
}

async function runCommand(args: readonly string[]): Promise<number> {
  const { values, positionals } = readArguments(args);
  const [command, operand, name] = positionals;
  if (command === undefined || values.help) {
    console.log(helpOn(command) ?? usage);
    return 0;
  }
  const done = await commandCalled(command)(operand, values, name);
  return done === "not so" ? 2 : 0;
}

function exitCode(error: unknown, command: string | undefined): number {
  if (error instanceof InputError || error instanceof TooWideError) {
    console.error(error.message);
    return 2;
  }
  if (error instanceof UsageError) {
    console.error(`${error.message}\n\n${helpOn(command) ?? usage}`);
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
