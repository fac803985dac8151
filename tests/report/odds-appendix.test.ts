import { describe, expect, it } from "vitest";
import { reportView } from "../../src/report/document/report-view.js";
import type { RowView } from "../../src/report/words/view-types.js";
import { exampleRun } from "./runs.js";
import { sampleOdds, sampleTold } from "./sample-odds.js";

const run = exampleRun("sorrel-bend");
const told = sampleTold("sorrel-bend");
const pageOf = (end: "precise" | "cap") => reportView(run, { ...told, odds: { ...told.odds, end } }).odds;
const page = pageOf("precise");
const textsOf = ({ cells }: RowView) => cells.map(({ text }) => text);
const rowsOf = (id: string) => page?.tables.find((table) => table.id === id)?.rows.map(textsOf);

describe("the appendix of odds", () => {
  it.each(["sorrel-bend", "ninemoss"] as const)("counts in %s each input that is drawn", (name) => {
    const { odds } = reportView(exampleRun(name), sampleTold(name));
    const distributions = odds?.tables.find(({ id }) => id === "table-distributions");
    // the sample takes its number of inputs from the drawing itself
    expect(distributions?.total?.cells[1]?.text).toBe(String(sampleOdds(name).inputs));
  });

  it("lists the groups of assumptions that move together", () => {
    const rows = rowsOf("table-drawn-together");
    expect(rows?.map(([, , correlation]) => Number(correlation))).toEqual(
      run.assumptions.groups.map(({ rankCorrelation }) => rankCorrelation),
    );
  });

  it("says why drawing ended", () => {
    expect(page?.method.join(" ")).toContain("The simulation ended when it was precise enough");
    expect(pageOf("cap")?.method.join(" ")).toContain("before it was as precise as asked");
  });

  it("names in the table of assumptions the distributions that are not the usual one", () => {
    const rows = reportView(run).appendix.assumptions.rows.map((row) => textsOf(row).join(" "));
    expect(rows.filter((text) => text.includes("; lognormal"))).toHaveLength(
      run.usedAssumptions.filter((id) => run.assumptions.entries.get(id)?.distribution === "lognormal")
        .length,
    );
    expect(rows.some((text) => text.includes("; pert"))).toBe(false);
  });

  it("holds ranks and worths of information as the data", () => {
    const { matters, information } = told.odds;
    expect(rowsOf("table-ranks")?.map((cells) => Number(cells[1]))).toEqual(
      matters.ranks.map(({ correlation }) => Number(correlation.toFixed(2))),
    );
    expect(rowsOf("table-information")?.map((cells) => Number(cells[1]?.replace(/[$,]/g, "")))).toEqual(
      information.map(({ value }) => Math.round(value)),
    );
    expect(page?.tables.map(({ id }) => id)).not.toContain("table-variance");
  });
});
