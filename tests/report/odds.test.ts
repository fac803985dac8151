import { describe, expect, it } from "vitest";
import { renderReport } from "../../src/report/document/html.js";
import { reportView } from "../../src/report/document/report-view.js";
import { resultsJson } from "../../src/report/results/results.js";
import { type RowView, type TableView, tableFileName } from "../../src/report/words/view-types.js";
import type { Odds } from "../../src/study/odds/odds.js";
import { exampleRun } from "./runs.js";
import { optionAt, sampleTold, withCheaper } from "./sample-odds.js";

const run = exampleRun("sorrel-bend");
const told = sampleTold("sorrel-bend");
const viewOf = (odds: Odds) => {
  const view = reportView(run, { odds, sensitivitySentences: told.sensitivitySentences });
  if (!view.odds) throw new Error("no odds in the view");
  return { ...view, odds: view.odds };
};
const { odds: page } = viewOf(told.odds);
const html = renderReport(run, { inline: false }, {}, told);
const tableById = (id: string): TableView => {
  const found = page.tables.find((table) => table.id === id);
  if (!found) throw new Error(`no ${id}`);
  return found;
};
const textsOf = ({ cells }: RowView) => cells.map(({ text }) => text);
const threeFigures = (amount: number) => Number(amount.toPrecision(3));
const printed = (text: string | undefined) => Number(text?.replace("−", "-").replace(/[^\d.-]/g, ""));

describe("the sentence of odds", () => {
  // The words follow from the scale of counts: never all or none.
  it.each([
    [0, "fewer than 1 in 100 (under 0.1%)"],
    [0.04, "fewer than 1 in 20 (4%)"],
    [0.05, "about 1 in 20 (5%)"],
    [0.27, "about 1 in 4 (27%)"],
    [0.34, "about 1 in 3 (34%)"],
    [0.65, "about 2 in 3 (65%)"],
    [0.95, "about 19 in 20 (95%)"],
    [0.96, "more than 19 in 20 (96%)"],
    [1, "more than 99 in 100 (over 99.9%)"],
  ])("tells a share of %d without certainty", (share, counts) => {
    const [sentence] = viewOf(withCheaper(told.odds, share)).odds.sentences;
    expect(sentence).toBe(
      `Chance that “Full-season stations” costs less in all than “No inspection program”: ${counts}.`,
    );
  });

  it("tells under how many sets of assumptions the option pays on average", () => {
    // invented 0.36 cheaper, of which the sample makes 1.2 times as many sets: 43.2%
    expect(page.sentences[1]).toBe("It pays on average in 43% of the assumption sets tried.");
  });

  it("stands as a likelihood on the board's page", () => {
    expect(html.slice(0, html.indexOf("</section>"))).toContain(
      "It is less likely than not to pay for itself, about 1 in 3 (36%)",
    );
  });
});

describe("a report without odds", () => {
  const without = renderReport(run, { inline: false });

  it("keeps its ranges and says nothing of odds", () => {
    expect(without).not.toContain("Odds were not drawn");
    expect(without).toContain('id="table-ranges"');
    expect(without).not.toContain("to pay for itself");
    expect(without).not.toContain("Appendix H. The odds");
  });

  it("has none in its results", () => {
    expect(resultsJson(run)).toHaveProperty("odds", null);
    expect(resultsJson(run, told.odds)).toHaveProperty("odds", told.odds);
  });
});

describe("the table of odds", () => {
  const { table } = page;
  const places = [0, 3, 1, 2].map((index) => optionAt(told.odds, index));

  it("has doing nothing and the requested option first", () => {
    expect(table.options).toEqual(places.map(({ name }) => name));
  });

  it("holds the data in thousands, to three figures", () => {
    const costs = [0.1, 0.5, 0.8, 0.9, 0.95].map((share) => (option: (typeof places)[number]) => {
      const cost = option.cost.find((each) => each.share === share);
      return [cost?.value, cost?.low, cost?.high].map((amount) =>
        threeFigures((amount ?? Number.NaN) / 1000),
      );
    });
    costs.forEach((expected, index) => {
      const cells = table.rows[index + 1]?.cells ?? [];
      expect(
        cells.map(({ value, spread }) => [value, ...spread.split("–")].map((text) => printed(text))),
      ).toEqual(places.map(expected));
    });
    const [mean] = table.rows;
    expect(mean?.cells.map(({ value }) => printed(value))).toEqual(
      places.map(({ meanCost }) => threeFigures(meanCost.value / 1000)),
    );
    expect(mean?.cells.map(({ spread }) => printed(spread))).toEqual(
      places.map(({ meanCost }) => Number((meanCost.standardError / 1000).toPrecision(2))),
    );
  });

  it("holds the budget at the study's confidence, the regret and the chances", () => {
    const cells = (label: string) =>
      table.rows.find((each) => each.label === label)?.cells.map(({ value }) => printed(value));
    expect(cells("Annual budget sufficient in 80% of outcomes")).toEqual(
      places.map(({ budget }) => threeFigures(budget.value / 1000)),
    );
    expect(cells("Average cost of choosing wrongly")).toEqual(
      places.map(({ regret }) => threeFigures(regret / 1000)),
    );
    expect(cells("Mussels establish")).toEqual(
      places.map(({ everInfested }) => Math.round(everInfested.value * 100)),
    );
    expect(cells("Costs less than no program")?.slice(1)).toEqual(
      places.slice(1).map(({ against }) => Math.round((against?.cheaper.value ?? Number.NaN) * 100)),
    );
  });

  it("goes on in the appendix where there are more options than fit beside one another", () => {
    const more = [1, 2, 3].map((index) => ({
      ...optionAt(told.odds, 2),
      id: `more-${index}`,
      name: `More ${index}`,
    }));
    const { odds } = viewOf({ ...told.odds, options: [...told.odds.options, ...more] });
    expect(odds.table.options).toHaveLength(4);
    expect(odds.moreOptions.map(({ options }) => options)).toEqual([["More 1", "More 2", "More 3"]]);
  });
});

describe("the charts of odds", () => {
  const charts = page.curves;

  it("have a text alternative each, and their table as a file", () => {
    expect(charts).toHaveLength(2);
    for (const { id, alternative, title, tableId } of charts) {
      expect(alternative).toContain(title);
      expect(html).toMatch(new RegExp(`id="${id}"[^>]* role="img" aria-label="[^"]{40,}"`));
      expect(page.tables.map((table) => table.id)).toContain(tableId);
      expect(html).toContain(`Figures: ${tableFileName(tableId)} in the tables as files`);
    }
  });

  it("hold the five widest inputs; the table has all, as the data", () => {
    const { tornado, netBenefit } = told.odds.matters;
    const names = page.pictures.tornado?.rows.map(({ name }) => name);
    expect(names).toHaveLength(5);
    expect(names?.[0]).toBe("Arrival: founding unknown");
    const rows = tableById("table-tornado").rows.map(textsOf);
    expect(rows.map((row) => row.slice(2).map(printed))).toEqual(
      tornado.map(({ low, high }) => [low, high].map((end) => threeFigures(end.netBenefit / 1000) + 0)),
    );
    expect(tableById("table-tornado").caption).toContain(`${netBenefit / 1000} with all as assumed`);
  });

  it("say how many inputs turn the answer alone", () => {
    const { tornado } = told.odds.matters;
    // the sample's estimate is above nothing: an input turns it where one of its ends is below
    const turning = tornado.filter(({ low, high }) => Math.min(low.netBenefit, high.netBenefit) <= 0);
    expect(page.pictures.tornado?.title).toBe(`Any one of ${turning.length} inputs could reverse the answer`);
    const never = viewOf({
      ...told.odds,
      matters: { ...told.odds.matters, tornado: tornado.filter((bar) => !turning.includes(bar)) },
    });
    expect(never.odds.pictures.tornado?.title).toBe("No input alone reverses the answer");
  });

  it("draw the years of the requested option and of doing nothing, with the figures of the table", () => {
    const without = optionAt(told.odds, 0);
    const rows = tableById("table-fan").rows.map((row) => textsOf(row).slice(1, 5).map(printed));
    expect(rows).toEqual(
      without.fan.map(({ p10, p50, p90, mean }) =>
        [p10, p50, p90, mean].map((amount) => threeFigures(amount / 1000)),
      ),
    );
  });
});

describe("what matters and what knowing it is worth", () => {
  it("stands on the page as it came, with the three inputs worth most", () => {
    expect(page.sensitivitySentences).toEqual(told.sensitivitySentences);
    // the sample: 4% of 14 million, a quarter and a ninth of that
    expect(page.information).toMatch(/is worth up to \$560,000 ± \$28,000; a measurement leaves doubt/);
    expect(page.information).toContain("up to $140,000");
    expect(page.information).toContain("up to $62,200");
    expect(page.information.match(/up to/g)).toHaveLength(3);
  });

  it("tells no worth that its error hides", () => {
    const information = told.odds.information.map((each) => ({ ...each, standardError: each.value }));
    expect(viewOf({ ...told.odds, information }).odds.information).toContain(
      "nothing that these simulated outcomes could tell from zero",
    );
  });
});

describe("hostile names in odds", () => {
  it("become no markup, in words or in charts", () => {
    const name = '</script><script>alert(1)</script> & "quoted"';
    const { odds } = told;
    const hostile: Odds = {
      ...odds,
      options: odds.options.map((option) => ({ ...option, name })),
      information: odds.information.map((each) => ({ ...each, name })),
      matters: { ...odds.matters, tornado: odds.matters.tornado.map((bar) => ({ ...bar, name })) },
    };
    const text = renderReport(run, { inline: false }, {}, { odds: hostile, sensitivitySentences: [name] });
    expect(text).not.toContain("<script>alert");
    expect(text).toContain("&lt;script&gt;alert(1)&lt;/script&gt;");
  });
});

describe("odds that do not hold what they should", () => {
  it("are refused, with the option named", () => {
    const options = told.odds.options.filter(({ id }) => id !== "full-season");
    expect(() => viewOf({ ...told.odds, options })).toThrow("full-season");
  });

  it("print no number that is not one", () => {
    expect(html.replace(/<[^>]+>/g, " ")).not.toMatch(/\bNaN\b|\bundefined\b|\bInfinity\b|\bnull\b/);
  });
});
