import { expect } from "vitest";
import { parse } from "yaml";
import { editedText, exampleDocument, placeIn, problemsIn, valueAt, wordsOfTheProgram } from "./example.js";

/** Fields of a study that are each well formed and yet cannot all be true. */
export interface Contradicting {
  readonly why: string;
  readonly edits: ReadonlyArray<readonly [place: string, value: unknown]>;
  /** Place that the message names, if it is not that of the first edit. */
  readonly at?: string;
  readonly found?: string;
  readonly allowed: string;
}

const example = exampleDocument();

/** The text that the example holds at a place. */
export const typed = (place: string): string => String(valueAt(example, place));

/** Expects that one of the problems told is the contradiction, in words for an author. */
export function expectContradiction({ edits, at, found = "", allowed }: Contradicting): void {
  const text = editedText(edits);
  const problems = problemsIn(text);
  expect(problems).toContainEqual({
    path: placeIn(parse(text), at ?? edits[0]?.[0] ?? "").text,
    found: expect.stringContaining(found),
    allowed: expect.stringContaining(allowed),
    remedy: expect.stringMatching(/^[A-Z].*\.$/),
  });
  for (const problem of problems) {
    for (const part of Object.values(problem)) expect(wordsOfTheProgram(part)).toBeUndefined();
  }
}

/** Expects a field of the example with one value put in to be told at its place, in words for an author. */
export function expectMalformed(place: string, value: unknown, allowed: string): void {
  expect(problemsIn(editedText([[place, value]]))).toContainEqual({
    path: placeIn(exampleDocument(), place).text,
    found: expect.any(String),
    allowed: expect.stringContaining(allowed),
    remedy: expect.stringMatching(/^[A-Z].*\.$/),
  });
}
