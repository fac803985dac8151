import { describe, expect, it } from "vitest";
import { parse, stringify } from "yaml";
import { at } from "../../src/lists.js";
import { breakEven } from "../../src/model/break-even/break-even.js";
import { programBudget } from "../../src/model/program/budget.js";
import { runStudy } from "../../src/study/prepare/compute.js";
import { readStudyText } from "../../src/study/reading/read.js";
import type { Edit } from "../report/edited.js";
import { assumptions, exampleRun } from "../report/runs.js";
import { exampleText, put, valueAt } from "../study/example.js";
import { optionsOf } from "./inputs-changed.js";
import { other } from "./listed-inputs.js";
import { liveInputs, withoutSearch } from "./live-inputs.js";
import { keyOf } from "./recalculated.js";

const invented = { origin: "invented" };

/** Few structures and years of Sorrel Bend, and all that an option may say. */
function smallStudy(edits: readonly Edit[] = []) {
  const document: unknown = parse(exampleText("sorrel-bend"));
  const structures = ["city-intake", "powerhouse", "reservoir-wide"];
  put(
    document,
    "structures",
    structures.map((id) => valueAt(document, `structures[${id}]`)),
  );
  put(document, "money.horizon", 8);
  put(document, "money.fiscalYearStart", "jul");
  put(document, "boats.otherWays", [
    { name: "Gear and aircraft", kind: "wildfowl-and-gear", chance: "0.05 %/yr", ...invented },
    { name: "Canal", chance: "2 %/yr", checked: true, infestedFrom: 2029, ...invented },
    { name: "Ditch", chance: "1 %/yr", becomesInfested: "20 %/yr", ...invented },
  ]);
  const option = "options[full-season]";
  put(document, `${option}.rampUp`, [{ reach: "60 %", cost: "85 %" }]);
  put(document, `${option}.steps.hold`, { share: "10 %", days: "5 d" });
  put(document, `${option}.steps.refusal`, "3 %");
  put(document, `${option}.steps.byClass`, [{ vesselClass: "infested-30-days", hotWash: "90 %" }]);
  put(document, `${option}.staff[0].overtime`, { hours: 120, pay: 1.5 });
  for (const [path, value] of edits) put(document, path, value);
  return runStudy(readStudyText(stringify(document), "study.yaml"), assumptions);
}

const run = smallStudy();
const live = await liveInputs(run);
const { book, listed, productWith, presentValues } = live;

const infested = await liveInputs(exampleRun("thistledown"));

describe("the list of inputs", () => {
  it("has an input of every kind", () => {
    expect(listed.filter(({ formula }) => formula === undefined).length).toBeGreaterThan(80);
    expect(run.comparison.schedules.length).toBe(2);
  });

  it("of a lake that is infested already has nothing on which nothing hangs", () => {
    const names = infested.listed.map(({ name }) => name);
    expect(names).toContain("Inspectors: hours paid");
    expect(names.filter((name) => /declare themselves|hot wash|yearly chance|inflation/i.test(name))).toEqual(
      [],
    );
  });

  const inputs = [live, infested].flatMap((of) =>
    of.own.map((input) => [`${input.section} › ${input.name}`, input, of] as const),
  );

  // The product re-computes from the changed input by its own functions; unit rates are changed on its lines, and the
  // discount rate and the horizon in the whole comparison.
  it.each(inputs)("leads to the product’s own present values: %s", (_, input, of) => {
    const to = other(input);
    const moved = of.book.changed(input.place, to, withoutSearch);
    expect(moved.size).toBeGreaterThan(1);
    const found = of.presentValues(moved);
    for (const { option, presentValue } of optionsOf(of.productWith(input, to))) {
      const [program, infestation] = found.get(option.name) ?? [];
      const expected = [presentValue.program.toNumber(), presentValue.infestation.toNumber()];
      expect([program, infestation].map((each, part) => Number(each) - at(expected, part))).toEqual(
        expected.map((each) => expect.closeTo(0, 6 - Math.floor(Math.log10(Math.abs(each) + 10)) + 1)),
      );
    }
  });
});

const ownValues = [valueAt(parse(exampleText("sorrel-bend")), "overrides")].flat();

// The whole product with another study: where it picks the same plans, the workbook comes to the same.
describe("the workbook and another study", () => {
  it.each<[pattern: RegExp, to: number, ...edits: Edit[]]>([
    [/^Discount rate/, 0.031, ["money.discountRate", "3.1 %/yr"], ["money.discountRateOrigin", "invented"]],
    [
      /^Price of an hour of maintenance/,
      65,
      ["overrides", [...ownValues, { id: "labour.maintenance-rate", value: "$65/h", reason: "as agreed" }]],
    ],
    [/^Risky boats that declare/, 0.7, ["options[full-season].steps.declaration", "70 %"]],
    [/^Patrol vehicle: number/, 5000, ["options[full-season].yearly[5].count", 5000]],
    [/^Inspectors: overtime, times/, 2, ["options[full-season].staff[0].overtime.pay", 2]],
  ])("come to the same present values with %s at %s", (pattern, to, ...edits) => {
    const input = listed.findLast(({ name, formula }) => pattern.test(name) && formula === undefined);
    if (!input) throw new Error(`no input ${pattern.source}`);
    const found = presentValues(book.changed(input.place, to, withoutSearch));
    const { baseline, options } = smallStudy(edits).comparison;
    for (const { option, presentValue } of [baseline, ...options.map(({ result }) => result)]) {
      const [program, infestation] = found.get(option.name) ?? [];
      expect(program).toBeCloseTo(presentValue.program.toNumber(), 2);
      expect(infestation).toBeCloseTo(presentValue.infestation.toNumber(), 2);
    }
  });
});

describe("what hangs on the answer", () => {
  const named = (pattern: RegExp) => {
    const input = listed.findLast(({ name, formula }) => pattern.test(name) && formula === undefined);
    if (!input) throw new Error(`no input ${pattern.source}`);
    return input;
  };

  it.each([
    [/^Discount rate/],
    [/^Chance of infestation through boats/],
    [/^Canal: chance while/],
    [/^Price of an hour of maintenance/],
    [/: chance that it succeeds$/],
    [/^Outreach, a year/],
  ])("the break-even values follow %s", (pattern) => {
    const input = named(pattern);
    const to = other(input);
    const moved = book.changed(input.place, to);
    const row = (name: string) => {
      const index = book.rows("Inputs").findIndex(([first]) => first === name);
      const place = { sheet: "Inputs", row: index + 1, col: 2 };
      return Number(moved.get(keyOf(place)) ?? book.valueAt(place));
    };
    const basis = productWith(input, to);
    const results = optionsOf(basis);
    const { money } = basis.input;
    const { study } = run.document;
    const found = (id: string) => results.find(({ option }) => option.id === id) ?? at(results, 0);
    const product = breakEven(found(study.requestedOption), at(results, 0), {
      schedules: basis.schedules,
      rates: basis.rates,
      factors: factorsOf(money),
      rises: run.comparison.rises,
    });
    expect(row("Break-even: lowest yearly chance without it")).toBeCloseTo(Number(product.hazard), 9);
    expect(row("Break-even: damage, times the estimate")).toBeCloseTo(Number(product.lossFactor), 8);
    expect(row("Break-even: yearly cost of the program")).toBeCloseTo(Number(product.programPerYear), 4);
  });

  it("the budget follows a wage, to the cent", () => {
    const input = listed.findLast(
      ({ name, formula }) => name === "Inspectors: hours paid" && formula === undefined,
    );
    if (!input) throw new Error("no hours");
    const moved = book.changed(input.place, 5000, withoutSearch);
    const basis = productWith(input, 5000);
    const option = basis.input.options.find(({ id }) => id === run.document.study.requestedOption);
    const budget = option && programBudget(option, basis.input.money);
    const rows = book.rows("Budget years");
    const total = rows.findIndex(([first]) => first === "All lines") + 1;
    const cents = budget?.totals.cents ?? [];
    expect(cents.length).toBe(5);
    cents.forEach((each, year) => {
      const place = { sheet: "Budget years", row: total, col: 4 + year };
      expect(Number(moved.get(keyOf(place)))).toBeCloseTo(each / 100, 2);
    });
  });
});

const factorsOf = ({ horizon, discountRate }: { horizon: number; discountRate: number }) =>
  Array.from({ length: horizon }, (_, year) => (1 + discountRate) ** -(year + 1 / 2));
