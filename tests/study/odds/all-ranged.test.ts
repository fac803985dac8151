import { describe, expect, it } from "vitest";
import { parse, stringify } from "yaml";
import { asWritten } from "../../../src/study/format/as-written.js";
import type { StudyDocument } from "../../../src/study/format/schema.js";
import { drawnStudy } from "../../../src/study/odds/draws.js";
import { InputError } from "../../../src/study/reading/problems.js";
import { rangedQuantities } from "../../../src/study/reading/ranged.js";
import { readStudyText } from "../../../src/study/reading/read.js";
import { singleValues } from "../../../src/study/typed/single-values.js";
import { assumptionSet } from "../../model/assumptions.js";
import { exampleNames, exampleText, put } from "../example.js";

type Path = readonly PropertyKey[];

const groupAt = (file: unknown, path: Path): unknown =>
  path.reduce((group, key): unknown => Reflect.get(Object(group), key), file);

function setAt(file: unknown, path: Path, value: unknown): void {
  Reflect.set(Object(groupAt(file, path.slice(0, -1))), path.at(-1) ?? "", value);
}

const read = (file: unknown) => readStudyText(stringify(file), "study.yaml");

/** From a thousandth off a value up to it, the value itself the likeliest: what is at its limit stays within. */
function withRange(text: string): string {
  const [number = ""] = /-?[\d.,]*\d/.exec(text) ?? [];
  const value = Number(number.replaceAll(",", ""));
  const end = text.replace(number, String(Number((value * 0.999).toPrecision(12))));
  return value > 0 ? `${end} to ${text} to ${text}` : `${text} to ${text} to ${end}`;
}

/** A range for each quantity of a file that may have one beside those of all the others. */
function allRanged(file: unknown): StudyDocument {
  const texts = singleValues(asWritten(read(file)), [], []).flatMap(({ path, quantity }) => {
    // One value for all months stands there by itself.
    const place = path.filter((key) => key !== "all");
    const isWritten = quantity.value !== 0 && typeof groupAt(file, place) !== "object";
    return isWritten ? [[place.join("/"), { place, text: quantity.text }] as const] : [];
  });
  const ranged = new Map(texts);
  for (const { place, text } of ranged.values()) setAt(file, place, withRange(text));
  for (;;) {
    const refused = refusedIn(file).map((place) => place.join("/"));
    if (refused.length === 0) return read(file);
    for (const name of refused) {
      const { place, text } = ranged.get(name) ?? fail(name);
      setAt(file, place, text);
      ranged.delete(name);
    }
  }
}

function fail(name: string): never {
  throw new Error(`${name} is refused without a range`);
}

function refusedIn(file: unknown): Path[] {
  try {
    read(file);
    return [];
  } catch (error) {
    if (error instanceof InputError) return error.problems.map(({ at }) => at ?? []);
    throw error;
  }
}

/** Every number in a value. */
function numbersIn(value: unknown): number[] {
  if (typeof value === "number") return [value];
  if (typeof value !== "object" || value === null) return [];
  return Object.values(value).flatMap(numbersIn);
}

/** What no example has with a range, each in a part of a study of which the draws take only some. */
const rarely = [
  "boats/cleanPeriods/0/launches",
  "report/ask/contingency/confidence",
  "report/ask/lastYearBudget",
  "report/ask/lastYearActual",
];

describe("an example with a range for every quantity", () => {
  it.each(exampleNames)("is drawn, to finite figures: %s", (name) => {
    const file: unknown = parse(exampleText(name));
    if (name === "sorrel-bend") {
      put(file, "report.ask.lastYearBudget", "$90,000");
      put(file, "report.ask.lastYearActual", "$85,000");
    }
    const study = allRanged(file);
    const ranged = rangedQuantities(study).map(({ path }) => path.join("/"));
    expect(ranged.length).toBeGreaterThan(150);
    if (name === "sorrel-bend") expect(ranged).toEqual(expect.arrayContaining(rarely));
    const drawn = drawnStudy(study, assumptionSet, { seed: 7, sampling: "latin-hypercube" });
    const figures = numbersIn(drawn.futures(0, 0));
    expect(figures.length).toBeGreaterThan(100);
    expect(figures.filter((figure) => !Number.isFinite(figure))).toEqual([]);
  });
});
