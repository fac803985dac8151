import { describe, expect, it } from "vitest";
import { sumOf } from "../../../src/lists.js";
import { renderReportBody } from "../../../src/report/document/html.js";
import { reportView } from "../../../src/report/document/report-view.js";
import { exampleDocument } from "../../study/example.js";
import { amount, type Edit, smallRun } from "../edited.js";
import { exampleRun } from "../runs.js";

const run = exampleRun("sorrel-bend");
const { found } = reportView(run);
if (!found) throw new Error("nothing if mussels are found");
const traced = run.found();
const exampleOptions = Object(exampleDocument()).options.map(({ id }: { id: string }) => id) as string[];
const cells = (rows: readonly { readonly cells: ReadonlyArray<{ readonly text: string }> }[] = []) =>
  rows.map((row) => row.cells.map(({ text }) => text));

describe("if mussels are found", () => {
  it("the treatment is the option's response and leaving boats the lake's duty: each costs what the comparison has", () => {
    const requested = run.comparison.options.find(({ result }) => result.option.id === "full-season");
    const ofPhase = (name: string) => traced?.phases.find(({ phase }) => phase.phase === name);
    const treatment = ofPhase("treatment");
    expect(treatment?.isCounted).toBe(true);
    // The comparison's own expected cost of the attempts, worked out by year and discounted there.
    expect(treatment?.expected.withIt).toBeCloseTo(
      requested?.result.containment?.presentValue.toNumber() ?? Number.NaN,
      4,
    );
    expect(ofPhase("leaving-boats")).toMatchObject({ cost: 185_000, isCounted: true });
    expect(ofPhase("suspicion")).toMatchObject({ cost: 4000, isCounted: false });
  });

  it("dates follow from the day of the first find", () => {
    const phases = cells(found.phases?.rows);
    expect(phases[0]?.slice(2, 4)).toEqual(["0–3", "15\u00a0Jul"]);
    expect(phases.find(([name]) => name === "Treatment")?.slice(2, 4)).toEqual(["45–59", "29\u00a0Aug"]);
    // Day 1,885 from 15 July is five years and 60 days later.
    expect(phases.find(([name]) => name === "Off the list")?.slice(2, 4)).toEqual([
      "1,885–1,915",
      "13\u00a0Sep",
    ]);
  });

  it("a closure loses the launch fees of its days, to those who would take them", () => {
    // 16 July to 14 August: 16 days at 60 + 34 launches of 12 and 20 of 8; 14 at 54 + 30 and 18.
    const lost = 16 * ((60 + 34) * 12 + 20 * 8) + 14 * ((54 + 30) * 12 + 18 * 8);
    expect(sumOf(traced?.lostFees.map((each) => each.amount) ?? [])).toBeCloseTo(lost, 6);
    expect(found.notes[0]).toContain("Authority general fund $36,700");
    expect(Math.abs(lost - 36_700)).toBeLessThan(50);
  });

  it("one more sample a year is worth what the comparison with it saves", () => {
    const watching = (ofRequested: number) =>
      smallRun([
        ["report", { found: { suspectedOn: "07-15" } }],
        ...exampleOptions.map(
          (id): Edit => [
            `options[${id}].monitoring`,
            { planktonTows: id === "full-season" ? ofRequested : 24, origin: "invented" },
          ],
        ),
      ]);
    const [now, more] = [watching(24), watching(25)];
    const costOf = ({ comparison }: typeof now) =>
      comparison.options.find(({ result }) => result.option.id === "full-season")?.result.presentValue
        .infestation;
    const saved = Number(costOf(now)) - Number(costOf(more));
    expect(Math.abs(saved)).toBeGreaterThan(0);
    expect(now.found()?.oneMore).toEqual([
      { kind: "planktonTows", perYear: expect.closeTo(saved / sumOf(now.comparison.discountFactors), 6) },
      { kind: "searches", perYear: expect.any(Number) },
    ]);
  });

  it("has a sheet for the wall of the study's own names and numbers, structures at risk and cautions", () => {
    const contacts = cells(found.wall.contacts.rows).flat().join(" ");
    expect(contacts).toContain("555-0101");
    expect(contacts).toContain("anything is dosed");
    expect(found.wall.structures.rows.length).toBeGreaterThan(4);
    expect(found.wall.cautions.join(" ")).toMatch(/pesticide in law .* permit/);
    expect(found.wall.standing).toContain("are in charge where they have authority");
    const html = renderReportBody(run);
    expect(html).toContain('id="appendix-found"');
    expect(html).toContain("the first 72 hours after a suspected find");
  });

  it("is not told of a lake in which mussels are known, nor where the study says nothing of it", () => {
    expect(renderReportBody(exampleRun("ninemoss"))).not.toContain('id="appendix-found"');
    const [row] = cells(found.phases?.rows);
    expect(amount(row?.[5])).toBe(4000);
  });
});
