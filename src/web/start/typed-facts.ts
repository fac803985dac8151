import type { QuestionGroup } from "../../study/short/question.js";
import { questionGroups } from "../../study/short/questions.js";

/** What was typed, by the names of inputs: "depth", "intakes/0/flow". */
export type Typed = Readonly<Record<string, string>>;

/** Chosen for a thing that is there and of which nothing more is known. */
export const isThere = "there";

const mostItems = 20;

/** The texts of an address or a form; of inputs sent twice the last. */
export function typedIn(sent: unknown): Typed {
  const entries = Object.entries(Object(sent)).flatMap(([name, value]: [string, unknown]) => {
    const last: unknown = Array.isArray(value) ? value.at(-1) : value;
    return typeof last === "string" ? [[name, last] as const] : [];
  });
  return Object.fromEntries(entries);
}

/** How many of a thing that may be there several times are shown: those typed, and one to begin with. */
export function countOf(group: QuestionGroup, typed: Typed): number {
  const asked = Number(typed[`${group.key}#count`] ?? 1);
  return Number.isInteger(asked) && asked >= 1 ? Math.min(asked, mostItems) : 1;
}

/** The name of an input. */
export const inputName = (group: QuestionGroup, key: string, index: number | undefined): string =>
  [group.key, ...(index === undefined ? [] : [String(index)]), key].filter((part) => part !== "").join("/");

/** Facts as they were typed. Things of which nothing was said are not there. */
export function rawFacts(typed: Typed): object {
  const raw: Record<string, unknown> = {};
  for (const group of questionGroups) {
    if (group.repeats) raw[group.key] = itemsOf(group, typed).map(({ values }) => values);
    else if (group.key === "") Object.assign(raw, valuesOf(group, typed, undefined));
    else {
      const values = valuesOf(group, typed, undefined);
      if (isSaid(group, values, typed, undefined)) raw[group.key] = values;
    }
  }
  return raw;
}

/** Whether anything was said of what mussels would foul. */
export const saysStructures = (typed: Typed): boolean =>
  Object.entries(typed).some(
    ([name, value]) => /^(intakes\/|plant\/|docks\/|ramps$)/.test(name) && value !== "",
  );

/** Things that may be there several times, with their places in the form: those left empty are left out. */
export function itemsOf(group: QuestionGroup, typed: Typed): { index: number; values: Values }[] {
  return Array.from({ length: countOf(group, typed) }, (_, index) => ({
    index,
    values: valuesOf(group, typed, index),
  })).filter(({ index, values }) => isSaid(group, values, typed, index));
}

type Values = Record<string, string>;

const valuesOf = (group: QuestionGroup, typed: Typed, index: number | undefined): Values =>
  Object.fromEntries(
    group.questions.map(({ key }) => {
      const value = typed[inputName(group, key, index)] ?? "";
      return [key, value === isThere ? "" : value];
    }),
  );

/** Whether anything was said of a thing. */
function isSaid(group: QuestionGroup, values: Values, typed: Typed, index: number | undefined): boolean {
  const presence = group.presence ? typed[inputName(group, presenceKey, undefined)] : undefined;
  const chosen = group.questions.some(({ key }) => typed[inputName(group, key, index)] === isThere);
  return chosen || presence === isThere || Object.values(values).some((value) => value.trim() !== "");
}

/** The input that says whether a thing is there. */
export const presenceKey = "present";
