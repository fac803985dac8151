import { counted } from "../../counted.js";
import { InputError, type Problem } from "../reading/problems.js";
import { type Setting, toldId } from "./settings.js";

/** The values that an assumption or a place of the study takes in turn. */
export interface SweptValues {
  readonly id: Setting["id"];
  readonly values: readonly Setting["value"][];
}

/** Most points of one sweep: minutes of computing. */
export const mostPoints = 2000;

/** Every combination of the values; the last of them changes first. @throws InputError */
export function pointsOf(subject: string, swept: readonly SweptValues[]): Setting[][] {
  const count = swept.reduce((product, { values }) => product * values.length, 1);
  const found = [...repeated(swept), ...withoutValues(swept)];
  if (count > mostPoints) found.push(tooMany(swept, count));
  if (found.length > 0) throw new InputError(subject, found);
  return swept.reduce<Setting[][]>(
    (points, { id, values }) => points.flatMap((point) => values.map((value) => [...point, { id, value }])),
    [[]],
  );
}

const repeated = (swept: readonly SweptValues[]): Problem[] =>
  swept
    .filter(({ id }, index) => swept.findIndex((each) => each.id === id) < index)
    .map(({ id }) => ({
      path: toldId(id),
      found: "set a second time",
      allowed: "one list of values for each",
      remedy: "Put all its values into one list.",
    }));

const withoutValues = (swept: readonly SweptValues[]): Problem[] =>
  swept
    .filter(({ values }) => values.length === 0)
    .map(({ id }) => ({
      path: toldId(id),
      found: "no values",
      allowed: "at least one value",
      remedy: "Give it values, or leave it out.",
    }));

function tooMany(swept: readonly SweptValues[], count: number): Problem {
  return {
    path: swept.map(({ id }) => toldId(id)).join(" × "),
    found: `${swept.map(({ values }) => values.length.toLocaleString("en-US")).join(" × ")} values, ${counted(count, "point")}`,
    allowed: `at most ${mostPoints.toLocaleString("en-US")} points in one sweep`,
    remedy: "Take wider steps, or ask in several requests.",
  };
}
