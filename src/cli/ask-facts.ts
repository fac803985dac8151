import { describe, sentence } from "../study/reading/problems.js";
import type { Writing } from "../study/short/amount-text.js";
import type { TypicalValues } from "../study/short/filling.js";
import type { Question, QuestionGroup } from "../study/short/question.js";
import { questionGroups } from "../study/short/questions.js";
import { readFacts } from "../study/short/read-facts.js";
import { typicalHint } from "../study/short/typical-hint.js";

/** A conversation on a terminal. */
export interface Talk {
  /** An answer as typed; empty where there is none, also once nobody answers any more. */
  readonly ask: (question: string) => Promise<string>;
  readonly print: (text: string) => void;
}

type Raw = Record<string, unknown>;

/** Asks for all facts, again where an answer cannot be. What is left empty is not known. */
export async function askFacts(talk: Talk, values: TypicalValues): Promise<Raw> {
  talk.print("Press Enter for anything you do not know: a typical value is used instead.\n");
  const raw: Raw = {};
  for (const group of questionGroups) {
    talk.print(`\n${group.title}`);
    if (group.repeats) await askSeveral(group, raw, talk, values);
    else await askGroup(group, raw, talk, values);
  }
  return raw;
}

/** Asks again where the answer is neither. */
async function saysYes(talk: Talk, question: string): Promise<boolean> {
  for (;;) {
    const answer = (await talk.ask(`  ${question} (y/N) `)).trim();
    if (/^y(es)?$/i.test(answer)) return true;
    if (/^(n|no)?$/i.test(answer)) return false;
    talk.print(`    Found ${describe(answer)}; allowed: y or n. Press Enter for no.`);
  }
}

async function askSeveral(group: QuestionGroup, raw: Raw, talk: Talk, values: TypicalValues): Promise<void> {
  const list: Raw[] = [];
  raw[group.key] = list;
  while (await saysYes(talk, list.length === 0 ? "Is there one?" : "Another one?")) {
    const item: Raw = {};
    list.push(item);
    await askQuestions(group, item, raw, talk, values);
  }
}

async function askGroup(group: QuestionGroup, raw: Raw, talk: Talk, values: TypicalValues): Promise<void> {
  if (group.presence !== undefined && !(await saysYes(talk, group.presence))) return;
  const item: Raw = group.key === "" ? raw : {};
  if (group.key !== "") raw[group.key] = item;
  await askQuestions(group, item, raw, talk, values);
}

async function askQuestions(
  { questions }: QuestionGroup,
  item: Raw,
  raw: Raw,
  talk: Talk,
  values: TypicalValues,
): Promise<void> {
  for (const question of questions) {
    for (;;) {
      const answer = (await talk.ask(questionText(question, raw, values))).trim();
      item[question.key] = answer;
      const { problems } = readFacts(raw, values);
      if (problems.length === 0) break;
      for (const problem of problems) talk.print(`    ${sentence(problem)}`);
      delete item[question.key];
    }
  }
}

function questionText(question: Question, raw: Raw, values: TypicalValues): string {
  const writing: Writing = { system: raw.units === "si" ? "si" : "us", currency: "USD" };
  const choices = question.choices?.map(([value]) => value).join(", ") ?? "";
  const notes = [question.help, choices, typicalHint(question, values, writing)].filter(Boolean);
  return `  ${question.label}${notes.length > 0 ? ` (${notes.join("; ")})` : ""}: `;
}
