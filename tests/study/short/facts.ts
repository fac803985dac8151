import { readFileSync } from "node:fs";
import { join } from "node:path";
import { parse } from "yaml";
import { firstStudy } from "../../../src/editor/first-study.js";
import { examplesFolder } from "../../../src/report/document/assets.js";
import type { StudyDocument } from "../../../src/study/format/schema.js";
import { readStudyText } from "../../../src/study/reading/read.js";
import { fullStudy } from "../../../src/study/short/full-study.js";
import { readFacts } from "../../../src/study/short/read-facts.js";
import { realSet } from "../../assumptions/real.js";

export const { entries } = realSet();
export const today = "2026-11-28";

/** Facts as somebody typed them. @throws Error if they cannot be */
function factsOf(typed: unknown) {
  const { facts, problems } = readFacts(typed, entries);
  if (!facts) throw new Error(JSON.stringify(problems));
  return facts;
}

/** The plain object of the full study. */
export const plainStudy = (typed: unknown): unknown => fullStudy(factsOf(typed), entries, today);

/** The text of the full study, and the study read from it. */
export function studyFrom(typed: unknown): { text: string; study: StudyDocument } {
  const text = firstStudy(factsOf(typed), entries, today);
  return { text, study: readStudyText(text, "first.yaml") };
}

export const shortText = (name: string): string =>
  readFileSync(join(examplesFolder, "short", `${name}.short.yaml`), "utf8");

export const shortExample = (name: string): unknown => parse(shortText(name));
