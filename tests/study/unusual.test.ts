import { describe, expect, it } from "vitest";
import { unusualEntries } from "../../src/report/document/check-rows.js";
import { renderReportBody } from "../../src/report/document/html.js";
import { resultsView } from "../../src/report/document/main-view.js";
import { renderPage } from "../../src/report/document/render-page.js";
import { reportView } from "../../src/report/document/report-view.js";
import { comparedRun } from "../../src/study/compared/compared.js";
import type { StudyRun } from "../../src/study/prepare/compute.js";
import { runStudy } from "../../src/study/prepare/compute.js";
import { confirmationOf } from "../../src/study/reading/confirmed.js";
import { readStudyText } from "../../src/study/reading/read.js";
import { assumptions, exampleRun } from "../report/runs.js";
import { absent, editedText } from "./example.js";
import { readSlip, runOf, slipsOf, toldAt } from "./slips.js";

/**
 * Slips of a unit or of a decimal point; the limits are those of assumptions/checks-usual.yaml. By hand: 0.028 m³/s
 * in 100 mm is 3.57 m/s, in 2.5 m 0.0057 m/s; 1,170 cfs in 150 cm is 61.5 ft/s, in 1,500 in 0.0953 ft/s; 250 mm at
 * 57 cm/s loses 0.86 m over 640 m with its local losses; the lake stands at 411.46 m in March 2022, its lowest; a ramp of 48 ft has 14.63/4 = 3.66 lanes, and 500/3.66 = 137.
 */
const slips = slipsOf(`
a conduit too narrow | ninemoss | structures[intake].conduit.diameter | 100 mm | 3.57 m/s | 0.1 m/s to 3 m/s
a conduit ten times too wide | ninemoss | structures[intake].conduit.diameter | 2.5 m | 0.0057 m/s | 0.1 m/s to 3 m/s
a penstock in cm for inches | sorrel | structures[hydropower].penstock.diameter | 150 cm | 61.5 ft/s | 1.6 ft/s to 26 ft/s
a penstock ten times too wide | sorrel | structures[hydropower].penstock.diameter | 1500 in | 0.0953 ft/s | 1.6 ft/s to 26 ft/s
a cooling line ten times too wide | sorrel | structures[hydropower].coolingWater.diameter | 60 in | velocity when clean | 0.66 ft/s to 13 ft/s
a head of a cooling line ten times too high | sorrel | structures[hydropower].coolingWater.availableHead | 140 ft | head available over | 1 to 30
a cooling line short of head | sorrel | structures[hydropower].coolingWater.availableHead | 4 ft | when clean: 0.92 | 1 to 30
an intake short of head | sorrel | structures[irrigation-intake].supply.availableHead | 2 ft | in the hardest month: 93.5% | at least 100% | structures[irrigation-intake].supply
a roughness in m for mm | ninemoss | structures[intake].conduit.roughness | 0.1 m | 100 mm | 0.001 mm to 9 mm
a length in km for m | ninemoss | structures[intake].conduit.length | 640 km | loses when clean | at most 100 m | structures[intake].conduit
a margin a hundred times too large | ninemoss | structures[intake].supply.marginHead | 200 m | 200 m | at most 30 m
a velocity limit a hundred times too high | ninemoss | structures[intake].rack.velocityLimit | 30 m/s | 30 m/s | at most 1.5 m/s
a rack a hundred times too wide | ninemoss | structures[intake].rack.width | 90 m | velocity between its clean bars | 0.01 m/s to 1.5 m/s | structures[intake].rack
bars in cm for mm | ninemoss | structures[intake].rack.clearSpacing | 400 mm | 400 mm | 5 mm to 300 mm
a head loss limit a hundred times too high | ninemoss | structures[intake].rack.headLossLimit | 10 m | 10 m | 0.02 m to 1.5 m
an intake that the water leaves | ninemoss | structures[intake].elevation | 411.9 m | −0.44 m | at least 0 m
an intake below the bottom | ninemoss | structures[intake].elevation | 40.7 m | lowest row of the storage table | at least 0 m
energy per kWh for per MWh | sorrel | structures[hydropower].energyPrice | $58/kWh | $58,000.00/MWh | $5.00/MWh to $500.00/MWh
pumping energy per MWh for per kWh | ninemoss | structures[intake].supply.energyPrice | EUR 0.19/MWh | price of energy | €4.50/MWh to €450.00/MWh
water per litre for per m³ | ninemoss | structures[intake].alternativeWater | €0.85/L | €850.00/m³ | €18.00/m³
a slope without its decimal | sorrel | structures[ramp].slope | 1.4 % | slope: 1.4% | 8% to 20%
a width in inches | sorrel | structures[ramp].width | 48 in | 4 ft | 8.2 ft to 330 ft
more launches than lanes take | sorrel | structures[ramp].launchesPerDay.jul | 500 | each lane in the busiest month: 137 | at most 100 | structures[ramp].launchesPerDay
a ramp above the water | ninemoss | structures[ramp].bottomElevation | 412.58 m | water over its bottom | at least 0 m
a ramp all under water | ninemoss | structures[ramp].topElevation | 411.3 m | height of its top | at least 0 m
an area a hundred times too small | ninemoss | structures[dock].wettedArea | 0.6 m2 | 0.6 m² | 1 m² to 5,000 m²
a cost of a hundred for that of one | sorrel | structures[dock].replacementCost | $24,000,000 | replacement cost | /ft²
a depth ten times too deep | sorrel | structures[dock].depth | 15 ft | 15 ft | at most 9.8 ft
the deck of a jetty | ninemoss | structures[jetty].elevation | 413.2 m | water over its wetted surface | at least 0 m
`);

const unusualIn = (edits: Parameters<typeof editedText>[0]) =>
  unusualEntries(comparedRun(readStudyText(editedText(edits), "study.yaml"), assumptions));

const narrow = (value: string) => {
  const [slip] = slips;
  if (!slip) throw new Error("no slip");
  return { ...slip, value };
};

describe("an entry outside of what is usual for its kind", () => {
  it.each(slips)("is told at its place: $why", (slip) => {
    const { text, keys } = toldAt(slip);
    const told = unusualEntries(runOf(slip)).filter(({ path }) => path === text);
    expect(told).toContainEqual({
      path: text,
      at: keys,
      found: expect.stringContaining(slip.found),
      allowed: expect.stringContaining(slip.allowed),
      remedy: expect.stringMatching(/^[A-Z].*\.$/),
      unusual: true,
    });
  });

  it("is told of a turbine under a head that is not for its type", () => {
    const pelton = { type: "pelton", ratedFlow: "1,200 cfs", generatorEfficiency: "97 %" };
    const told = unusualIn([
      ["structures[hydropower].efficiency", absent],
      ["structures[hydropower].turbine", pelton],
      ["structures[hydropower].tailwaterElevation", "2,060 ft"],
    ]);
    expect(told.map(({ found }) => found).join()).toContain(
      "pelton turbine: head between lake and tailwater",
    );
  });

  it("is told of a lake with fewer launches than its ramps have", () => {
    // By hand: the three ramps have 14,946 launches a year, as many as 1,200 entered ones 12.5 times.
    const months = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];
    const launches = Object.fromEntries(months.map((month) => [month, 100]));
    const told = unusualIn([["boats.launches", launches]]);
    expect(told.find(({ path }) => path === "boats.launches")?.found).toContain(": 12.5");
  });

  it.each(["sorrel-bend", "ninemoss"] as const)("is told of no entry of %s", (name) => {
    expect(unusualEntries(exampleRun(name))).toEqual([]);
  });

  it("stands on page 1 with its place, what was found, what is usual and what to do", () => {
    const { board } = reportView(runStudy(readSlip(narrow("100 mm")), assumptions));
    expect(board.failedChecks).toContain(
      "Village water intake, conduit: velocity when clean, at the largest flow: 3.57 m/s; expected 0.1 m/s to 3 m/s. Look again at its diameter and its flow, and at their units.",
    );
  });

  it("is named under the heading that page 1 gives, in each report and on the page of results", () => {
    const run = runStudy(readSlip(narrow("100 mm")), assumptions);
    const { report } = run.document;
    const short = { ...run, document: { ...run.document, report: { ...report, leaveOut: ["left-out"] } } };
    const pages = [
      renderReportBody(run),
      renderReportBody(short as typeof run, undefined, { part: "board" }),
      renderPage("partials/results-body", { ...resultsView(run), links: { report: "" } }),
    ];
    for (const page of pages) {
      const [, heading = "none"] = /check did not pass\. Before deciding, read “([^”]+)”/.exec(page) ?? [];
      expect(page.split(`<h2>${heading}</h2>`)).toHaveLength(2);
      expect(page).toContain("Village water intake, conduit: velocity when clean");
    }
  });

  it("that its author confirmed is listed as that, and no more as open on page 1", () => {
    const document = readSlip(narrow("100 mm"));
    const confirmed = unusualEntries(runOf(narrow("100 mm"))).map((each) => confirmationOf(each, document));
    expect(confirmed).toHaveLength(1);
    const told = (value: string) => {
      const slip = readSlip(narrow(value));
      const study = { ...slip.study, confirmed };
      const { board, appendix } = reportView(runStudy({ ...slip, study }, assumptions));
      return { board, text: appendix.checksText, row: appendix.shownChecks?.rows.at(-1) };
    };
    const right = told("100 mm");
    expect(right.board.failedChecks).toEqual([]);
    expect(right.text).toContain("1 did not pass and is listed below; the author confirmed what was entered");
    expect(right.row?.failed).toBe(false);
    expect(right.row?.cells.at(-1)?.text).toBe("no; confirmed by the author");
    const another = told("99 mm");
    expect(another.board.failedChecks).toHaveLength(1);
    expect(another.row?.cells.at(-1)?.text).toBe("NO");
  });

  it("changes no figure: a bore just within and one just past the limit cost all but the same", () => {
    const [inside, past] = ["109.1 mm", "108.9 mm"].map((value) => runOf(narrow(value)).comparison);
    if (!inside || !past) throw new Error("no comparison");
    const failed = (run: StudyRun["comparison"]) => run.entryChecks.filter(({ passed }) => !passed).length;
    expect([failed(inside), failed(past)]).toEqual([0, 1]);
    const cost = (run: StudyRun["comparison"]) => run.baseline.presentValue.infestation.toNumber();
    expect(Math.abs(cost(past) / cost(inside) - 1)).toBeLessThan(0.01);
  });
});
