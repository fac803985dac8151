import { readXlsx } from "hucre";
import { beforeAll, describe, expect, it } from "vitest";
import { plainForms } from "../../src/forms/forms.js";
import { tableFiles } from "../../src/forms/tables.js";
import { reportView } from "../../src/report/document/report-view.js";
import type { PrintedOdds } from "../../src/report/odds/odds-words.js";
import { resultsJson } from "../../src/report/results/results.js";
import { differenceTexts } from "../../src/report/words/adding-up.js";
import { clearPercent, formatter, percent, ratio } from "../../src/report/words/format.js";
import { inCounts, likelihoodWord } from "../../src/report/words/likelihood.js";
import type { TableView } from "../../src/report/words/view-types.js";
import type { StudyRun } from "../../src/study/prepare/compute.js";
import { exampleDocument, valueAt } from "../study/example.js";
import { fewOdds } from "./drawn-odds.js";
import { editedRun } from "./edited.js";
import { exampleRun } from "./runs.js";

const monitoring = { noticedWithin: ["30 %", "60 %"], origin: "invented" };

/** A lake with one dock, over a few years, and an option whose cost and effect come from a seed. */
function randomStudy(seed: number): StudyRun {
  const drawn = (place: number) => ((seed * 7919 + place * 104_729) % 1000) / 1000;
  const share = (place: number) => `${Math.round(30 + 69 * drawn(place))} %`;
  const steps = {
    ...{ coverage: share(1), declaration: share(2), quickCheck: share(3), inspection: share(4) },
    ...{ hotWash: share(5), deterrence: "0 %", origin: "invented" },
  };
  const asked = {
    ...{ id: "asked", name: "Stations", monitoring, steps, afterInfestation: { share: "0 %" } },
    yearly: [{ name: "All of it", cost: `$${Math.round(1000 + 60_000 * drawn(6))}/yr`, origin: "invented" }],
  };
  return editedRun(
    [
      ["structures", [valueAt(exampleDocument(), "structures[marina]")]],
      ["money.horizon", 12],
      ["study.requestedOption", "asked"],
      ["options", [{ id: "none", name: "No program", monitoring, afterInfestation: { share: "0 %" } }]],
    ],
    asked,
  );
}

const studies: ReadonlyArray<readonly [string, () => StudyRun]> = [
  ["Sorrel Bend", () => exampleRun("sorrel-bend")],
  ["Ninemoss", () => exampleRun("ninemoss")],
  ...[1, 2, 3, 4, 5].map((seed) => [`a study of seed ${seed}`, () => randomStudy(seed)] as const),
];

/** Texts of a table's row by its first cell. */
const textsOf = (table: TableView | undefined, first: string) =>
  table?.rows.find(({ cells }) => cells[0]?.text === first)?.cells.map(({ text }) => text);

describe.each(studies)("one answer on all pages of %s", (_, runOf) => {
  const run = runOf();
  const { money, study } = run.document;
  const format = formatter(money.currency, study.units);
  let told: PrintedOdds;
  beforeAll(async () => {
    told = await fewOdds(run);
  });

  const netTexts = (from: number, less: number) => {
    const told = differenceTexts({ from, less }, format);
    expect(told.difference).toBe(format.money(from - less));
    return [told.less, told.from, told.difference];
  };

  /** The requested option and the one that does nothing, straight from the odds. */
  function answer() {
    const { options, requested, baseline } = told.odds;
    const [own, none] = [requested, baseline].map((id) => options.find((each) => each.id === id));
    if (!own?.against || !none) throw new Error("the odds lack an option");
    const p10 = own.against.netBenefits.find(({ share }) => share === 0.1)?.value ?? Number.NaN;
    return { own, none, against: own.against, p10 };
  }

  it("is the expectation on the first page, in the table of options and in the odds", () => {
    const { own, none, against, p10 } = answer();
    const view = reportView(run, told);
    const chances = [none, own].map(({ everInfested }) => percent(everInfested.value));
    expect(view.board.certainty).toContain(
      `The chance that mussels establish within ${money.horizon} years is ${chances[0]} without it and ${chances[1]} with it`,
    );
    expect(view.board.certainty).toContain(
      `The net benefit is ${format.money(against.netBenefit.value)} on average`,
    );
    const pays = clearPercent(against.cheaper.value);
    expect(view.board.answer).toContain(
      `It is ${likelihoodWord(against.cheaper.value)} to pay for itself, ${inCounts(against.cheaper.value)} (${pays})`,
    );
    expect(view.board.pays).toBe(against.netBenefit.value > 0);
    expect(textsOf(view.board.accounts, "Structures alone")).toEqual([
      "Structures alone",
      ratio(against.benefitCostRatio ?? Number.NaN),
      format.money(against.netBenefit.value),
      pays,
    ]);
    expect(textsOf(view.board.ranked, `${own.name} (requested)`)?.slice(1)).toEqual([
      chances[1],
      format.money(against.netBenefit.value),
      pays,
    ]);
    const cells = view.comparison.headline?.rows.find(
      ({ cells: [first] }) => first?.text === own.name,
    )?.cells;
    expect(cells?.map(({ text }) => text)).toEqual([
      own.name,
      chances[1],
      percent(own.infestedAtEnd.value),
      ...netTexts(against.avoidedLoss.value, against.addedCost.value),
      format.money(p10),
      expect.any(String),
      pays,
      ratio(against.benefitCostRatio ?? Number.NaN),
    ]);
    const row = (label: string) => view.odds?.table.rows.find((each) => each.label === label)?.cells;
    expect(
      row("Mussels establish")
        ?.slice(0, 2)
        .map(({ value }) => value),
    ).toEqual(chances);
    expect(row("Costs less than no program")?.[1]?.value).toBe(pays);
  });

  it("has a second account of the same outcomes where staff entered other losses", () => {
    const { withOther } = answer().against;
    const cells = textsOf(reportView(run, told).board.accounts, "With the other losses entered");
    expect(cells).toEqual(
      withOther && [
        "With the other losses entered",
        ratio(withOther.benefitCostRatio ?? Number.NaN),
        format.money(withOther.netBenefit.value),
        clearPercent(withOther.cheaper.value),
      ],
    );
  });

  it("is bridged to the case at central values by an amount that is their difference", () => {
    const { netBenefit } = answer().against;
    const central = run.comparison.options
      .find(({ result }) => result.option.id === study.requestedOption)
      ?.netBenefit.toNumber();
    if (central === undefined) throw new Error("no requested option");
    const difference = netBenefit.value - central;
    expect(reportView(run, told).board.bridge).toContain(
      `At central values the net benefit is ${format.money(central)}; what is uncertain ${difference > 0 ? "adds" : "takes away"} ${format.money(Math.abs(difference))}, because`,
    );
  });

  it("stands in the results, the workbook, the table as CSV and the page for a meeting", async () => {
    const { own, against } = answer();
    expect(resultsJson(run, told.odds)).toMatchObject({
      headline: { requested: own.id, confidence: run.confidence(told.odds) },
    });
    const { headline } = JSON.parse(JSON.stringify(resultsJson(run, told.odds)));
    const option = headline.options.find(({ id }: { id: string }) => id === own.id);
    expect(option).toMatchObject({
      everInfested: own.everInfested.value,
      balance: { netBenefit: against.netBenefit.value, benefitCostRatio: against.benefitCostRatio },
    });
    const forms = await plainForms({ run, printedOdds: told, edition: "" });
    const bytesOf = (path: string) => forms.find((form) => form.path === path)?.bytes ?? new Uint8Array();
    const { sheets } = await readXlsx(bytesOf("workbook.xlsx"));
    const row = sheets[0]?.rows.find((cells) => cells[0] === own.name);
    expect(row?.slice(1, 4)).toEqual([
      own.everInfested.value,
      own.infestedAtEnd.value,
      against.netBenefit.value,
    ]);
    expect(row?.[7]).toBe(against.benefitCostRatio);
    const { withOther } = against;
    expect(option.balance.withOther?.netBenefit).toBe(withOther?.netBenefit.value);
    const second = sheets[0]?.rows.find((cells) => cells[0] === `${own.name}, with the other losses entered`);
    expect(second?.[3]).toBe(withOther?.netBenefit.value);
    const table = tableFiles(reportView(run, told)).find(({ fileName }) => fileName === "headline.csv");
    expect(table?.csv).toContain(format.money(against.netBenefit.value).replace("−", "-"));
    expect(new TextDecoder().decode(bytesOf("summary.html")).replaceAll("\u2060", "")).toContain(
      `The net benefit is ${format.money(against.netBenefit.value)} on average`,
    );
  });
});
