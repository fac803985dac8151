import { extractText, getDocumentProxy } from "unpdf";
import { afterAll, describe, expect, it } from "vitest";
import { renderReportBody } from "../../../src/report/document/html.js";
import { reportView } from "../../../src/report/document/report-view.js";
import { printSettings } from "../../../src/report/print/paper.js";
import { createPrinter } from "../../../src/report/print/printer.js";
import type { TableView } from "../../../src/report/words/view-types.js";
import { appendices, boardSections } from "../../../src/study/format/report-schema.js";
import type { StudyDocument } from "../../../src/study/format/schema.js";
import { runStudy } from "../../../src/study/prepare/compute.js";
import { amount, editedRun, withSchedule } from "../edited.js";
import { assumptions, exampleDocument, exampleRun } from "../runs.js";

const printer = createPrinter();
afterAll(() => printer.close());

/** Sorrel Bend with its structures over and over, their names of uneven length. */
function manyStructures(count: number): StudyDocument {
  const document = exampleDocument("sorrel-bend");
  const structures = Array.from({ length: count }, (_, place) => {
    const original = document.structures[place % document.structures.length];
    if (!original) throw new Error("the example has no structures");
    const where = place % 3 === 0 ? ", of those along the shore between the old mill and the dam" : "";
    return { ...original, id: `${original.id}-${place}`, name: `${original.name} ${place}${where}` };
  });
  return { ...document, structures };
}

const run = exampleRun("sorrel-bend");
const manyRun = runStudy(manyStructures(40), assumptions);

const tablesOf = (study: typeof run): TableView[] => {
  const { appendix, infestation, comparison, program } = reportView(study);
  return [
    appendix.lines,
    appendix.everyLine,
    appendix.byYear,
    infestation.byStructure,
    infestation.everyStructure,
    comparison.yearly,
    program.cost,
    program.everyCost,
    program.budget,
  ].flatMap((table) => table ?? []);
};

const cases = [
  ...tablesOf(run).map((table) => [`${table.id}`, table] as const),
  ...tablesOf(manyRun).map((table) => [`${table.id} of 40 structures`, table] as const),
  ...tablesOf(editedRun(withSchedule)).map((table) => [`${table.id} with a schedule`, table] as const),
];

const isSum = ({ cells }: TableView["rows"][number]) => cells[0]?.text === "Sum";

describe("sums that are carried from page to page", () => {
  it.each(cases)("are those of the amounts printed before them in %s", (_name, table) => {
    const { carries = [], rows } = table;
    expect(carries.length).toBeGreaterThan(0);
    const isByGroup = table.id.endsWith("program-cost");
    let sums = carries.map(() => 0);
    for (const row of rows) {
      if (row.group && isByGroup) sums = carries.map(() => 0);
      if (!row.group && !row.subtotal && !isSum(row)) {
        sums = sums.map((sum, place) => sum + amount(row.cells[carries[place] ?? 0]?.text));
      }
      const carried = row.pageMayEnd?.sums ?? [];
      if (carried.length === 0) continue;
      carried.map(amount).forEach((each, place) => {
        expect(each).toBeCloseTo(sums[place] ?? Number.NaN, 4);
      });
    }
    if (table.total === undefined) return;
    const total = table.total.cells;
    sums.forEach((sum, place) => {
      expect(amount(total[carries[place] ?? 0]?.text)).toBeCloseTo(sum, 4);
    });
  });

  it("are told after no heading and right before no sum", () => {
    for (const [, { rows }] of cases) {
      rows.forEach((row, place) => {
        const next = rows[place + 1];
        if (row.group || next === undefined || next.subtotal || isSum(next))
          expect(row.pageMayEnd).toBeUndefined();
      });
    }
  });

  it.each(["letter", "a4"] as const)(
    "stand at the foot of one page and the head of the next, on %s",
    async (paper) => {
      const kept = new Set<string>(["cost-lines", "register"]);
      const leaveOut = [...boardSections, ...appendices].filter((section) => !kept.has(section));
      const document = { ...manyRun.document, report: { ask: {}, leaveOut, texts: [] } };
      const body = renderReportBody({ ...manyRun, document });
      const pdf = await printer.print(body, { ...printSettings(document), paper });
      const { text } = await extractText(await getDocumentProxy(pdf));
      const pages = text.map((page) => page.replace(/\s+/g, " "));
      const forward = pages.map((page) => sumsAfter(page, "Carried forward"));
      const brought = pages.map((page) => sumsAfter(page, "Brought forward"));
      expect(forward.filter((sums) => sums.length > 0).length).toBeGreaterThan(3);
      // One table ends on a page, and another may begin: at most one sum row of either kind on each.
      expect(brought.slice(1)).toEqual(forward.slice(0, -1));
      const told = new Set(
        cases.flatMap(([, { rows }]) => rows.map(({ pageMayEnd }) => pageMayEnd?.sums.join(" "))),
      );
      for (const sums of forward.filter((each) => each.length > 0)) expect(told).toContain(sums.join(" "));
    },
  );
});

/** The amounts that follow a name, in whole units of money. */
function sumsAfter(page: string, name: string): string[] {
  const found = new RegExp(`${name}((?: -?[$€][\\d,]+)+)`).exec(page)?.[1];
  return found?.trim().split(" ") ?? [];
}
