import { extractText, getDocumentProxy } from "unpdf";
import { afterAll, describe, expect, it } from "vitest";
import { z } from "zod";
import { renderReportBody } from "../../src/report/document/html.js";
import { reportView } from "../../src/report/document/report-view.js";
import { printSettings } from "../../src/report/print/paper.js";
import { createPrinter } from "../../src/report/print/printer.js";
import { resultsJson } from "../../src/report/results/results.js";
import { frontierPicture } from "../../src/report/search/frontier-picture.js";
import { formatter } from "../../src/report/words/format.js";
import type { TableView } from "../../src/report/words/view-types.js";
import { searchSchema } from "../../src/study/format/search-schema.js";
import { oddsSettings } from "../../src/study/format/uncertainty-schema.js";
import { fewOdds } from "./drawn-odds.js";
import { exampleDocument, exampleRun } from "./runs.js";
import { searchedHere } from "./searched-here.js";

/** What page 1 is held against: the results as a program gets them, at full precision. */
const shape = z.object({
  baseline: z.object({
    hazard: z.number(),
    infestedByYear: z.array(z.number()),
    equivalentYearly: z.object({ infestation: z.coerce.number() }),
  }),
  options: z.array(
    z.object({
      id: z.string(),
      hazard: z.number(),
      infestedByYear: z.array(z.number()),
      programPerYear: z.coerce.number(),
      benefitCostRatio: z.number(),
      breakEven: z.object({ hazard: z.number().nullable(), programPerYear: z.coerce.number().nullable() }),
    }),
  ),
});

const printer = createPrinter();
afterAll(() => printer.close());

const plain = (text: string) => text.replace(/\s+/g, " ");
const money = (amount: number) => `$${Number(amount.toPrecision(3)).toLocaleString("en-US")}`;
const percent = (share: number) => `${Number((share * 100).toPrecision(2))}%`;

describe("page 1 of the printed board's part", () => {
  it("has the results' own figures, rounded: money to three figures, chances to two", async () => {
    const run = exampleRun("sorrel-bend");
    const pdf = await printer.print(
      renderReportBody(run, undefined, { part: "board" }),
      printSettings(run.document),
    );
    const { text, totalPages } = await extractText(await getDocumentProxy(pdf));
    const first = plain(text[0] ?? "");
    const { baseline, options } = shape.parse(JSON.parse(JSON.stringify(resultsJson(run))));
    const asked = options.find(({ id }) => id === run.document.study.requestedOption);
    if (!asked) throw new Error("the requested option is not in the results");
    expect(first).toContain(`Program, per year ${money(asked.programPerYear)}`);
    expect(first).toContain(`expected per year ${money(baseline.equivalentYearly.infestation)}`);
    expect(first).toContain(
      `${percent(baseline.infestedByYear.at(-1) ?? 0)} → ${percent(asked.infestedByYear.at(-1) ?? 0)}`,
    );
    expect(first).toContain(`${percent(baseline.hazard)} a year without, ${percent(asked.hazard)} with`);
    expect(first).toContain(`Benefit–cost ratio ${asked.benefitCostRatio.toFixed(2)}`);
    expect(first).toContain(`Break-even yearly chance ${percent(asked.breakEven.hazard ?? 0)}`);
    const less = 1 - (asked.breakEven.programPerYear ?? 0) / asked.programPerYear;
    expect(first).toContain(`It would pay if the program cost at least ${percent(less)} less`);
    expect(first).toContain("Signatures");
    // A board reads at most six pages: the brief for this report.
    expect(totalPages).toBeLessThanOrEqual(6);
  });
});

/** Numbers as a reader counts them: "1,330,000" and "0.56" are one each. */
const numbersIn = (text: string) => text.match(/\d[\d.,]*/g) ?? [];

/** A board reads no more on page 1, and in all: the brief for this report. */
const mostNumbers = { pageOne: 60, inAll: 350 };

describe("the board's part with the odds", () => {
  it.each(["sorrel-bend", "ninemoss"] as const)(
    "holds the answer on page 1, and all of it on six in %s",
    async (name) => {
      const run = exampleRun(name);
      const pdf = await printer.print(
        renderReportBody(run, await fewOdds(run), { part: "board" }),
        printSettings(run.document),
      );
      const { text } = await extractText(await getDocumentProxy(pdf));
      const first = plain(text[0] ?? "");
      expect(text).toHaveLength(6);
      expect(numbersIn(first).length).toBeLessThanOrEqual(mostNumbers.pageOne);
      expect(numbersIn(plain(text.join(" "))).length).toBeLessThanOrEqual(mostNumbers.inAll);
      for (const part of [
        "confidence:",
        "Structures alone",
        "All options, on average",
        "What the board is asked",
        "Moved, that the",
        "What would change the answer",
        "Signatures",
      ]) {
        expect(first).toContain(part);
      }
    },
  );
});

describe("the board's part of a study with a search", () => {
  it("keeps to its pages and numbers, and says what each program costs and leaves", async () => {
    const document = { ...exampleDocument("sorrel-bend"), search: searchSchema.parse({}) };
    const withoutSearch = exampleRun("sorrel-bend");
    const run = { ...withoutSearch, document };
    const settings = oddsSettings(document.study.uncertainty);
    const search = searchedHere({ document, settings });
    // What is searched for changes no future.
    const drawn = await fewOdds(withoutSearch);
    const odds = { ...drawn, odds: { ...drawn.odds, search } };
    const pdf = await printer.print(
      renderReportBody(run, odds, { part: "board" }),
      printSettings(run.document),
    );
    const { text } = await extractText(await getDocumentProxy(pdf));
    expect(text).toHaveLength(6);
    expect(numbersIn(plain(text[0] ?? "")).length).toBeLessThanOrEqual(mostNumbers.pageOne);
    const whole = plain(text.join(" "));
    expect(numbersIn(whole).length).toBeLessThanOrEqual(mostNumbers.inAll);
    const { money, study } = document;
    const format = formatter(money.currency, study.units);
    const title = search.programs && frontierPicture(search.programs, format, money.horizon)?.title;
    expect(whole).toContain(title ?? "no frontier");
  });
});

/** Pages of the whole report. */
const mostPages = { "sorrel-bend": 30, ninemoss: 20 } as const;
/** A page of fewer is a heading alone, with its foot. */
const fewestWords = 60;

describe("the whole report with the odds", () => {
  it.each(["sorrel-bend", "ninemoss"] as const)(
    "keeps to its pages in %s, and leaves none all but empty",
    async (name) => {
      const run = exampleRun(name);
      const pdf = await printer.print(renderReportBody(run, await fewOdds(run)), printSettings(run.document));
      const { text } = await extractText(await getDocumentProxy(pdf));
      expect(text.length).toBeLessThanOrEqual(mostPages[name]);
      for (const page of text) expect(plain(page).split(" ").length).toBeGreaterThan(fewestWords);
    },
  );
});

const amount = (text: string | undefined) => Number((text ?? "").replace("−", "-").replace(/[^0-9.-]/g, ""));
const isAmount = (text: string | undefined) => /^−?[$€]/.test(text ?? "");

/** Sums of the printed cells of a table's money columns, beside its printed totals. */
function columnSums({ rows, total }: TableView): { sum: number; printed: number }[] {
  const cells = total?.cells ?? [];
  return cells.flatMap(({ text }, column) => {
    if (!isAmount(text)) return [];
    const each = rows.map((row) => row.cells[column]?.text).filter(isAmount);
    return [{ sum: each.reduce((sum, cell) => sum + amount(cell), 0), printed: amount(text) }];
  });
}

describe("tables with a total", () => {
  it.each(["sorrel-bend", "ninemoss"] as const)("add up as printed in %s", (name) => {
    const view = reportView(exampleRun(name));
    for (const table of [view.infestation.byStructure, view.comparison.bearers]) {
      const sums = columnSums(table);
      expect(sums.length).toBeGreaterThan(1);
      for (const { sum, printed } of sums) expect(sum).toBe(printed);
    }
  });

  it.each(["sorrel-bend", "ninemoss"] as const)("add up along the rows of options in %s", (name) => {
    const { rows } = reportView(exampleRun(name)).program.byOption;
    for (const { cells } of rows) {
      const amounts = cells.slice(1).map(({ text }) => amount(text));
      expect(amounts.slice(0, -1).reduce((sum, each) => sum + each, 0)).toBe(amounts.at(-1));
    }
  });
});
