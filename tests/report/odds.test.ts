import { describe, expect, it } from "vitest";
import { renderReport } from "../../src/report/document/html.js";
import { reportView } from "../../src/report/document/report-view.js";
import { futuresText } from "../../src/report/odds/odds-words.js";
import { resultsJson } from "../../src/report/results/results.js";
import { type RowView, type TableView, tableFileName } from "../../src/report/words/view-types.js";
import type { Odds } from "../../src/study/odds/odds.js";
import { exampleRun } from "./runs.js";
import { optionAt, sampleTold, withCheaper } from "./sample-odds.js";

const run = exampleRun("sorrel-bend");
const told = sampleTold("sorrel-bend");
const viewOf = (odds: Odds) => {
  const view = reportView(run, { odds, sensitivitySentences: told.sensitivitySentences });
  const tornado = view.odds?.tornado;
  if (!view.odds || !tornado) throw new Error("no odds in the view");
  return { ...view, odds: { ...view.odds, tornado } };
};
const { odds: page, boardOdds } = viewOf(told.odds);
const html = renderReport(run, { inline: false }, {}, told);
const tableById = (id: string): TableView => {
  const found = page.tables.find((table) => table.id === id);
  if (!found) throw new Error(`no ${id}`);
  return found;
};
const textsOf = ({ cells }: RowView) => cells.map(({ text }) => text);
const threeFigures = (amount: number) => Number(amount.toPrecision(3));
const printed = (text: string | undefined) => Number(text?.replace(/[^\d.-]/g, ""));

describe("the sentence of odds", () => {
  // The words follow from the brief: tenths from 5% to 95%, "of 20" beyond, and never all or none.
  it.each([
    [0, "In fewer than 1 of 20 futures", "in nearly all (more than 19 of 20) it costs as much or more"],
    [0.04, "In fewer than 1 of 20 futures", "in nearly all (more than 19 of 20) it costs as much or more"],
    [0.05, "In about 1 of 10 futures", "in about 9 of 10 it costs as much or more"],
    [0.35, "In about 4 of 10 futures", "in about 6 of 10 it costs as much or more"],
    [0.65, "In about 7 of 10 futures", "in about 3 of 10 it costs as much or more"],
    [0.95, "In about 9 of 10 futures", "in about 1 of 10 it costs as much or more"],
    [0.96, "In nearly all futures (more than 19 of 20)", "in fewer than 1 of 20 it costs as much or more"],
    [1, "In nearly all futures (more than 19 of 20)", "in fewer than 1 of 20 it costs as much or more"],
  ])("tells a share of %d without certainty", (share, start, rest) => {
    const [sentence] = viewOf(withCheaper(told.odds, share)).odds.sentences;
    expect(sentence).toBe(
      `${start} “Full-season stations” comes out cheaper than “No inspection program”; ${rest}.`,
    );
  });

  it("never tells none or all of ten", () => {
    for (let share = 0; share <= 1000; share++) {
      expect(futuresText(share / 1000)).not.toMatch(/\b(0|10) of 10/);
    }
  });

  it("tells with how many sets of assumptions the option is worth its cost", () => {
    // invented 0.36 cheaper, of which the sample makes 1.2 times as many sets: 43.2%
    expect(page.sentences[1]).toBe(
      "With 43% of the sets of assumptions it is worth its cost on average over luck; with the rest it is not.",
    );
  });

  it("stands on the page for a meeting as one line, and as a chance on the board's page", () => {
    expect(boardOdds).toBe(
      "The odds: in about 4 of 10 futures “Full-season stations” comes out cheaper than “No inspection program”; in about 6 of 10 it costs as much or more.",
    );
    expect(html.slice(0, html.indexOf("</section>"))).toContain("the chance that it pays for itself is 36%");
  });
});

describe("a report without odds", () => {
  const without = renderReport(run, { inline: false });

  it("keeps its ranges and says nothing of odds", () => {
    expect(without).not.toContain("Odds were not drawn");
    expect(without).toContain('id="table-ranges"');
    expect(without).not.toContain("The odds: in");
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
    expect(cells("Yearly amount enough in 80% of futures")).toEqual(
      places.map(({ budget }) => threeFigures(budget.value / 1000)),
    );
    expect(cells("Regret, on average")).toEqual(places.map(({ regret }) => threeFigures(regret / 1000)));
    expect(cells("Ever infested")).toEqual(
      places.map(({ everInfested }) => Math.round(everInfested.value * 100)),
    );
    expect(cells("Cheaper than no program")?.slice(1)).toEqual(
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
  const charts = [...page.curves, page.tornado];

  it("have a text alternative each, and their table as a file", () => {
    expect(charts).toHaveLength(3);
    for (const { id, alternative, title, tableId } of charts) {
      expect(alternative).toContain(title);
      expect(html).toMatch(new RegExp(`id="${id}"[^>]* role="img" aria-label="[^"]{40,}"`));
      expect(page.tables.map((table) => table.id)).toContain(tableId);
      expect(html).toContain(`Figures: ${tableFileName(tableId)} among the tables as files`);
    }
  });

  it("hold the eight widest inputs; the table has all, as the data", () => {
    const { tornado, netBenefit } = told.odds.matters;
    const { data } = JSON.parse(page.tornado.json) as { data: { labels: string[] } };
    expect(data.labels).toHaveLength(8);
    expect(data.labels[0]).toBe("arrival: founding unknown: 0.05%–0.46%");
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
    expect(page.tornado.title).toContain(`each of ${turning.length} inputs alone turns the answer`);
    const never = viewOf({
      ...told.odds,
      matters: { ...told.odds.matters, tornado: tornado.filter((bar) => !turning.includes(bar)) },
    });
    expect(never.odds.tornado.title).toContain("no input alone turns the answer");
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
    expect(page.information).toMatch(/is worth up to \$560,000: a measurement that costs less/);
    expect(page.information).toContain("up to $140,000");
    expect(page.information).toContain("up to $62,200");
    expect(page.information.match(/up to/g)).toHaveLength(3);
  });

  it("tells no worth that its error hides", () => {
    const information = told.odds.information.map((each) => ({ ...each, standardError: each.value }));
    expect(viewOf({ ...told.odds, information }).odds.information).toContain(
      "nothing that these futures could tell from zero",
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
