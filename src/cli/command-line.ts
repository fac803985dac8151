import { PlainError } from "../plain-error.js";
import { readArguments, UsageError } from "./arguments.js";
import { commandCalled } from "./command-table.js";
import { helpOn, usage } from "./help/help-text.js";

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
  const isSystem = error instanceof Error && "code" in error;
  console.error(error instanceof PlainError || isSystem ? error.message : error);
  if (error instanceof UsageError) console.error(`\n${helpOn(command) ?? usage}`);
  return error instanceof PlainError && error.isToCorrect ? 2 : 1;
}
