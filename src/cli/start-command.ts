import { existsSync, readFileSync, statSync } from "node:fs";
import { basename, join } from "node:path";
import { createInterface } from "node:readline";
import { loadAssumptions } from "../assumptions/load.js";
import { counted } from "../counted.js";
import { firstStudy } from "../editor/first-study.js";
import { assumptionsFolder, examplesFolder } from "../report/document/assets.js";
import { InputError } from "../study/reading/problems.js";
import { largestStudyBytes, readStudyText, tooLarge } from "../study/reading/read.js";
import { decodeStudy } from "../study/reading/study-bytes.js";
import { type FactNote, factNotes } from "../study/short/fact-notes.js";
import type { ShortFacts } from "../study/short/facts-schema.js";
import type { TypicalValues } from "../study/short/filling.js";
import { questionGroups } from "../study/short/questions.js";
import { readFacts, shortFactsOf } from "../study/short/read-facts.js";
import { askFacts, type Talk } from "./ask-facts.js";
import { writeWhole } from "./write-whole.js";

type Print = (text: string) => void;

interface StartArguments {
  /** A short file; without one the questions are asked. */
  readonly file: string | undefined;
  readonly out: string;
  /** Whether a short file to begin with is written instead. */
  readonly example: boolean;
}

/** Writes a full study from a few facts. @param today YYYY-MM-DD */
export async function startCommand(
  { file, out, example }: StartArguments,
  today: string,
  print: Print,
): Promise<void> {
  mustBeNew(out);
  if (example) {
    writeWhole(out, readFileSync(join(examplesFolder, "short", "sorrel-bend.short.yaml"), "utf8"));
    print(`Wrote ${out}. Fill in your own facts, then: ramp-and-rack start ${out} --out lake.yaml`);
    return;
  }
  const { entries } = loadAssumptions(assumptionsFolder);
  const facts =
    file === undefined
      ? await askedFacts(entries, print)
      : shortFactsOf(textIn(file), basename(file), entries);
  const text = firstStudy(facts, entries, today);
  const { structures, study } = readStudyText(text, out);
  writeWhole(out, text);
  const typical = Object.keys(study.typical ?? {}).length;
  print(
    `Wrote ${out}: ${counted(structures.length, "structure")}; ${counted(typical, "typical value")} to replace with your own, listed under study.typical.`,
  );
  for (const { at, text } of factNotes(facts, entries)) print(`Look again at ${questionAt(at)}: ${text}`);
}

/** In the words in which it is asked. */
function questionAt(at: FactNote["at"]): string {
  const key = at.at(-1);
  const asked = questionGroups.flatMap(({ questions }) => questions).find((each) => each.key === key);
  return `“${asked?.label ?? key}”`;
}

/** What somebody has entered since is not written over. */
function mustBeNew(out: string): void {
  if (!existsSync(out)) return;
  const found = `"${out}", which exists`;
  throw new InputError("start", [
    { path: "--out", found, allowed: "a new file", remedy: "Name another file, or move that one away." },
  ]);
}

function textIn(path: string): string {
  const name = basename(path);
  let bytes: number;
  try {
    bytes = statSync(path).size;
  } catch {
    const problem = {
      path: "the file",
      found: "no such file",
      allowed: "the path of a short file",
      remedy:
        "Check the path, or write one to start from: ramp-and-rack start --example --out lake.short.yaml.",
    };
    throw new InputError(name, [problem]);
  }
  if (bytes > largestStudyBytes) throw tooLarge(name, bytes);
  return decodeStudy(readFileSync(path), name);
}

async function askedFacts(values: TypicalValues, print: Print): Promise<ShortFacts> {
  const lines = createInterface({ input: process.stdin });
  const answers = lines[Symbol.asyncIterator]();
  const talk: Talk = {
    print,
    ask: async (question) => {
      process.stdout.write(question);
      const { value, done } = await answers.next();
      return done === true ? "" : value;
    },
  };
  try {
    const { facts, problems } = readFacts(await askFacts(talk, values), values);
    if (facts) return facts;
    throw new InputError("The answers", problems);
  } finally {
    lines.close();
  }
}
