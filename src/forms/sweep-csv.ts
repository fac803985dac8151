import { stringify } from "csv-stringify/sync";
import { plainMinus } from "../report/words/minus.js";
import { forXml } from "../study/reading/characters.js";
import { sentence } from "../study/reading/problems.js";
import type { Sweep, SweptOption } from "../study/swept/sweep.js";

const columns: ReadonlyArray<readonly [key: keyof SweptOption, head: (money: string) => string]> = [
  ["programPerYear", (money) => `program a year (${money})`],
  ["addedProgramCost", (money) => `added program cost, present value (${money})`],
  ["avoidedDamage", (money) => `damage avoided, present value (${money})`],
  ["netBenefit", (money) => `net benefit, present value (${money})`],
  ["benefitCostRatio", () => "benefit-cost ratio"],
  ["expectedDamage", (money) => `expected damage, present value (${money})`],
  ["chancePerYear", () => "yearly chance of infestation"],
  ["chanceAtEnd", () => "chance of infestation within the horizon"],
];

/** Significant digits: more than a cent of any amount, and enough to compute from. */
const digits = 15;

const figure = (value: SweptOption[keyof SweptOption]): string =>
  typeof value === "number" ? String(Number(value.toPrecision(digits))) : (value ?? "");

/** A line for each option at each point, with the unrounded figures; a point without figures has one that tells why. */
export function sweepCsv({ swept, points, currency, priceYear }: Sweep): string {
  const money = `${currency} of ${priceYear}`;
  const head = [...swept, "option", "name", ...columns.map(([, text]) => text(money)), "problem"];
  const lines = points.flatMap(({ settings, options, problems }) => {
    const values = settings.map(({ value }) => String(value));
    if (problems.length > 0) {
      const told = problems.map(sentence);
      return [[...values, "", "", ...columns.map(() => ""), told.join(" ")]];
    }
    return options.map((option) => [
      ...values,
      option.id,
      option.name,
      ...columns.map(([key]) => figure(option[key])),
      "",
    ]);
  });
  return stringify(
    [head, ...lines].map((cells) => cells.map(forXml)),
    { cast: { string: (text) => ({ value: text, escape_formulas: !isNumber(text) }) } },
  );
}

const isNumber = (text: string): boolean => text !== "" && Number.isFinite(Number(plainMinus(text)));
