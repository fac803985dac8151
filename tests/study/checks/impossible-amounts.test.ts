import { describe, expect, it } from "vitest";
import { checkStudy } from "../../../src/study/checks/check.js";
import { comparedRun } from "../../../src/study/compared/compared.js";
import { studyJsonSchema } from "../../../src/study/format/schema.js";
import { oddsSettings } from "../../../src/study/format/uncertainty-schema.js";
import { drawnStudy } from "../../../src/study/odds/draws.js";
import { runStudy } from "../../../src/study/prepare/compute.js";
import { readStudyText } from "../../../src/study/reading/read.js";
import { assumptions } from "../../report/runs.js";
import { editedText, inputErrorOf } from "../example.js";
import { runOf, slipsOf, toldAt } from "../slips.js";

/**
 * Limits are those of assumptions/checks-usual.yaml, judged. By hand: an acre-foot is 43,560 ft³ of 0.0283168466 m³, or
 * 1,233.48 m³, which cost at most 12.3 million at 10,000 a cubic metre; a megalitre costs at most ten million, a MWh a
 * million at 1,000 a kWh, a tonne ten million at 10,000 a kilogram; in euros all is 0.9 of it.
 */
const slips = slipsOf(`
a dock whose dearest is beyond all | sorrel | structures[dock].replacementCost | $5,000 to $9,000 to $9e14 | whose high end is USD 900,000,000,000,000 | at most USD 10,000,000,000
the same in euros | ninemoss | structures[dock].replacementCost | €5,000 to €9e14 | whose high end is EUR 900,000,000,000,000 | at most EUR 9,000,000,000
one of several choices | sorrel | structures[dock].replacementCost | one of $95,000 (90 %), $9e14 (10 %) | whose high end is USD 900,000,000,000,000 | at most USD 10,000,000,000
a range without ends | sorrel | structures[dock].replacementCost | $5,000 to $9e14 as lognormal | whose high end is USD 900,000,000,000,000 | at most USD 10,000,000,000
one amount | sorrel | options[full-season].yearly[0].unitCost | $9e12 | "$9e12" | at most USD 10,000,000,000
a yearly loss | sorrel | structures[lake-wide].items[3].cost | $1e5/yr to $1e14/yr | USD 100,000,000,000,000/yr | at most USD 10,000,000,000/yr
a day without water | ninemoss | structures[hatchery].shortfall.lossPerDay | €900/d to €1e9/d | EUR 1,000,000,000/d | at most EUR 90,000,000/d
the pay of a year for that of an hour | sorrel | options[full-season].staff[1].wage | $36/h to $75,000/h | USD 75,000/h | at most USD 10,000/h
water at one end | sorrel | structures[city-intake].alternativeWater | $100 to $310 to $9e9/acre-ft | USD 9,000,000,000/acre-ft | at most USD 12,300,000/acre-ft
energy at one end | sorrel | structures[city-intake].supply.energyPrice | $0.08/kWh to $0.09/kWh to $4e5/kWh | USD 400,000,000/MWh | at most USD 1,000,000/MWh
carbon at one end | ninemoss | structures[treatment-plant].tasteAndOdour.carbonPrice | €3 to €1e6/kg | EUR 1,000,000,000/t | at most EUR 9,000,000/t
`);

/** Those which are judged above and below. */
const judged = ["", "PerDay", "PerEnergy", "PerHour", "PerMass", "PerTreatedVolume", "PerVolume", "PerYear"];

const [first] = slips;

describe("an amount that nobody pays", () => {
  it.each(slips)("is refused at its place, at whichever end of a range it stands: $why", (slip) => {
    const { text, keys } = toldAt(slip);
    expect(inputErrorOf(() => runOf(slip)).problems).toContainEqual({
      path: text,
      at: keys,
      found: expect.stringContaining(slip.found),
      allowed: slip.allowed,
      remedy: expect.stringMatching(
        /^Correct the amount, its unit or its range\. If it is right, .* checks\.impossible-[a-z-]+\.$/,
      ),
    });
  });

  it("is told where its author typed one price for all months", () => {
    const byProducts = { origin: "invented", cost: "€3 to €1e9/ML" };
    const text = editedText([["structures[treatment-plant].byProducts", byProducts]], "ninemoss");
    const [told] = checkStudy(text, "lake.yaml", assumptions).problems;
    expect(told?.path).toMatch(/"waterworks-treatment"\]\.byProducts\.cost$/);
    expect(told?.at?.slice(2)).toEqual(["byProducts", "cost"]);
    expect(told?.allowed).toBe("at most EUR 9,000,000/ML");
  });

  it("is told alike by the check, beside the fields and by the report", () => {
    if (!first) throw new Error("no slip");
    const text = editedText([[first.place, first.value]]);
    const document = readStudyText(text, "lake.yaml");
    const told = checkStudy(text, "lake.yaml", assumptions).problems;
    expect(told).toHaveLength(1);
    expect(inputErrorOf(() => comparedRun(document, assumptions)).problems).toEqual(told);
    expect(inputErrorOf(() => runStudy(document, assumptions)).problems).toEqual(told);
    expect(
      inputErrorOf(() => drawnStudy(document, assumptions, oddsSettings(document.study.uncertainty)))
        .problems,
    ).toEqual(told);
  });

  it("may be as large as its limit", () => {
    const at = (most: string) =>
      editedText([["structures[lake-wide].items[3].cost", `$1e5/yr to ${most}/yr`]]);
    const problems = (most: string) => checkStudy(at(most), "lake.yaml", assumptions).problems.length;
    expect([problems("$1e10"), problems("$1.01e10")]).toEqual([0, 1]);
  });

  it.each([
    ["structures[city-intake].supply.energyPrice", "$1000000/MWh"],
    ["structures[city-intake].alternativeWater", "$12300000/acre-ft"],
    ["options[full-season].staff[1].wage", "$10000/h"],
  ])("may be the limit that is told at %s, in its unit", (place, most) => {
    expect(checkStudy(editedText([[place, most]]), "lake.yaml", assumptions).problems).toEqual([]);
  });

  it.each([
    ["0.8847", "€8850000000", 0],
    ["0.8847", "€8860000000", 1],
    ["150", "€1.5e12", 0],
    ["150", "€1.51e12", 1],
  ])("follows an exchange rate of %s: %s", (exchangeRate, cost, count) => {
    const edits = [
      ["money.exchangeRate", Number(exchangeRate)],
      ["structures[dock].replacementCost", cost],
    ] as const;
    expect(checkStudy(editedText(edits, "ninemoss"), "lake.yaml", assumptions).problems).toHaveLength(count);
  });

  it.each([
    ["sorrel-bend", "structures[lake-wide].items[3].cost", "$1.2e10/yr", "checks.impossible-amount", "$2e10"],
    [
      "ninemoss",
      "structures[hatchery].shortfall.lossPerDay",
      "€1e8/d",
      "checks.impossible-daily-amount",
      "€2e8",
    ],
  ] as const)(
    "is accepted in %s where the study has a limit of its own",
    (example, place, value, id, limit) => {
      const problems = (overrides: readonly object[]) =>
        checkStudy(
          editedText(
            [
              [place, value],
              ["overrides", overrides],
            ],
            example,
          ),
          "lake.yaml",
          assumptions,
        ).problems;
      expect(problems([])).toEqual([expect.objectContaining({ remedy: expect.stringContaining(` ${id}.`) })]);
      expect(problems([{ id, value: limit, reason: "as the ledger has it" }])).toEqual([]);
    },
  );

  it("is known of every kind of amount that a study has", () => {
    const kinds = JSON.stringify(studyJsonSchema()).matchAll(/"dimension":"money(\w*)"/g);
    expect([...new Set([...kinds].map(([, kind]) => kind))].sort()).toEqual(judged);
  });
});
