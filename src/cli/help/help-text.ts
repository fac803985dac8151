import { type Usage, usages } from "./usages.js";

/** Columns of the calls beside what they do. */
const callWidth = 32;

const notes = `STUDY is a YAML or JSON file. Studies are kept in the folder that RAMP_AND_RACK_DATA names, otherwise in ./data.\nExit codes: 0, done; 1, the machine failed (no browser, say); 2, something for you to correct.`;

/** Each call on lines of its own, what it does beside or below it. */
const waysOf = (command: string, { ways }: Usage): string[] =>
  ways.map(([call, does]) => {
    const text = `  ${`ramp-and-rack ${command} ${call}`.trimEnd()}`;
    const indent = " ".repeat(callWidth + 16);
    const gap = text.length + 2 > indent.length ? `\n${indent}` : " ".repeat(indent.length - text.length);
    return `${text}${gap}${wrapped(does, lineWidth - indent.length).join(`\n${indent}`)}`;
  });

const lineWidth = 118;

function wrapped(text: string, width: number): string[] {
  const lines = [""];
  for (const word of text.split(" ")) {
    const line = lines.at(-1) ?? "";
    if (line.length + 1 + word.length > width) lines.push(word);
    else lines[lines.length - 1] = line === "" ? word : `${line} ${word}`;
  }
  return lines;
}

export const usage = [
  "Usage:",
  ...Object.entries(usages).flatMap(([command, each]) => waysOf(command, each)),
  "",
  "For an example: ramp-and-rack COMMAND --help.",
  notes,
].join("\n");

/** A command's own usage and an example; undefined where there is no such command. */
export function helpOn(command: string | undefined): string | undefined {
  const found = command !== undefined && Object.hasOwn(usages, command) ? usages[command] : undefined;
  if (command === undefined || !found) return undefined;
  const lines = waysOf(command, found);
  return ["Usage:", ...lines, "", "Example:", `  ramp-and-rack ${found.example}`, "", notes].join("\n");
}
