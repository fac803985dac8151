import { describe, expect, it } from "vitest";
import { totalOf } from "../../src/model/money/line.js";
import { programLines } from "../../src/model/program/cost.js";
import { reportView } from "../../src/report/document/report-view.js";
import { resultsJson } from "../../src/report/results/results.js";
import type { RowView, TableView } from "../../src/report/words/view-types.js";
import { absent } from "../study/example.js";
import { amount, smallRun } from "./edited.js";
import { exampleRun } from "./runs.js";

const sorrelBend = exampleRun("sorrel-bend");
const view = reportView(sorrelBend);
const cents = (text: string | undefined) => Math.round(100 * amount(text));
const textOf = (row: RowView) => row.cells.map(({ text }) => text);

/** Rows of the table under each option's name. */
function sections(table: TableView): Map<string, RowView[]> {
  const found = new Map<string, RowView[]>();
  let rows: RowView[] = [];
  for (const row of table.rows) {
    if (row.group) {
      rows = [];
      found.set(row.cells[0]?.text ?? "", rows);
    } else rows.push(row);
  }
  return found;
}

describe("the table of what options cost", () => {
  it.each(["Full-season stations", "Weekend stations", "No inspection program"])(
    "adds up as printed, to the cent: lines to subtotals, and lines to the sum of “%s”",
    (name) => {
      const rows = sections(view.program.cost).get(name) ?? [];
      let all = 0;
      let group = 0;
      let several = 0;
      for (const row of rows) {
        const [head, text = ""] = textOf(row);
        const printed = cents(row.cells.at(-1)?.text);
        if (!row.subtotal) {
          if (head !== "") [group, several] = [0, 0];
          all += printed;
          group += printed;
          several += 1;
        } else if (text.endsWith(" together")) {
          expect(several).toBeGreaterThan(1);
          expect(printed).toBe(group);
        } else expect(printed).toBe(all);
      }
      const result = [
        sorrelBend.comparison.baseline,
        ...sorrelBend.comparison.options.map((each) => each.result),
      ].find(({ option }) => option.name === name);
      expect(all).toBe(result?.programPerYear.times(100).toNumber());
    },
  );

  it("has each line's quantity, its unit and unit rate", () => {
    const rows = sections(view.program.cost).get("Full-season stations")?.map(textOf);
    // As entered: 24 tows at 180; 1,500 a year to run each of two units; 3,250 stickers less a twentieth, a quarter of the
    // fifth that four times the fee keeps away.
    expect(rows).toContainEqual(["Monitoring", "Plankton tows", "24", "tow", "$180.00", "4,320.00"]);
    expect(rows).toContainEqual(["", "Hot-wash unit, running cost", "2", "each", "$1,500.00", "3,000.00"]);
    expect(rows).toContainEqual([
      "Other revenue",
      "State grant for outreach",
      "1",
      "year",
      "−$4,000.00",
      "−4,000.00",
    ]);
    expect(rows).toContainEqual([
      "Fees",
      "Season sticker of sealed boats",
      "3,087.5",
      "each",
      "−$10.00",
      "−30,875.00",
    ]);
  });

  it("says where amounts come from", () => {
    expect(view.program.cost.note).toMatch(/Origins\. .*Plankton tows.*Loss of demand: invented\./);
  });
});

describe("the fee that would carry a program", () => {
  const note = (run = sorrelBend) => reportView(run).comparison.feeNotes.at(-1) ?? "";

  it("is told in a sentence, and as beyond what was stated where it is", () => {
    expect(note()).toMatch(
      /^“Full-season stations”: \$48\.65 from each of 4,768 paying boats would cover the whole \$232,000 a year, net of other revenue; the present fees bring in \$89,400, 39% of it\. That is above \$40\.00, .*beyond what was stated\.$/,
    );
  });

  it("leaves nothing to carry when it is charged", () => {
    const { option } = sorrelBend.comparison.options.at(-1)?.result ?? {};
    if (!option) throw new Error("no option");
    const { perBoat } = JSON.parse(JSON.stringify(resultsJson(sorrelBend))).options.at(-1).fullCostFee;
    // By hand: 3,250, 2,750 and 300 boats, of which 1 % stay away for each 2 of the fee: 6,300 f (1 − f/200) = 231,930.01.
    expect(6300 * Number(perBoat) * (1 - Number(perBoat) / 200)).toBeCloseTo(231_930.01, 6);
    const fees = [{ name: "Equal fee", countPerYear: 3250 + 2750 + 300, fee: Number(perBoat) }];
    const lines = programLines({ ...option, fees }, sorrelBend.comparison.input.money);
    expect(Math.abs(totalOf(lines).toNumber())).toBeLessThanOrEqual(0.01);
  });

  it("is none without payers, and not needed where other revenue is enough", () => {
    const withoutFees = [
      ["options[full-season].fees", []],
      ["options[full-season].demandLoss", absent],
    ] as const;
    expect(note(smallRun(withoutFees))).toBe("“Full-season stations”: nobody pays, so no fee can cover it.");
    const grant = [{ name: "Grant", amount: "$300,000/yr", origin: "invented" }];
    expect(note(smallRun([["options[full-season].otherRevenue", grant]]))).toContain("no fee is needed");
  });

  it("says that nobody is taken to stay away where the study states no loss of demand", () => {
    expect(note(smallRun([["options[full-season].demandLoss", absent]]))).toContain(
      "This assumes no boater is deterred.",
    );
  });

  it("is shown fee by fee with the class that pays", () => {
    const rows = sections(view.program.fees ?? view.program.cost)
      .get("Full-season stations")
      ?.map(textOf);
    expect(rows?.map((cells) => cells.slice(0, 4))).toEqual([
      ["Season sticker of sealed boats", "Never left the lake (sealed)", "3,088", "$10.00"],
      ["Season sticker of day users", "Day use from waters without mussels", "2,475", "$20.00"],
      [
        "Day stickers of boats from infested waters",
        "On infested water in the last 30 days",
        "270",
        "$20.00",
      ],
    ]);
  });
});

describe("the program in force", () => {
  it("has the increment told on the first page, in the table and in the results", () => {
    expect(view.board.increment).toMatch(
      /^Compared with “Weekend stations”, the current program, it takes 2,490 more staff hours a year and, over 30 years, has a net cost of /,
    );
    // By hand: 4,910 + 700 - 2,700 - 420 = 2,490 h.
    const rows = view.comparison.increments?.rows.map(textOf) ?? [];
    expect(rows.map(([name]) => name)).toEqual([
      "No inspection program",
      "No inspection, deeper winter drawdown",
      "Full-season stations",
    ]);
    expect(rows.at(-1)?.[2]).toBe("2,490");
    expect(resultsJson(sorrelBend)).toMatchObject({ existingOption: "weekends" });
    // The comparison with no program stays.
    expect(view.comparison.balance?.caption).toContain("No inspection program");
  });

  it("agrees with the two comparisons against no program", () => {
    const [, weekends, fullSeason] = sorrelBend.comparison.options;
    if (!weekends || !fullSeason) throw new Error("no options");
    const { increments } = JSON.parse(JSON.stringify(resultsJson(sorrelBend)));
    const net = fullSeason.netBenefit.minus(weekends.netBenefit).toNumber();
    expect(Number(increments.at(-1).netBenefit)).toBeCloseTo(net, 2);
  });

  it.each([
    ["named by nobody", absent],
    ["the option without a program", "none"],
  ])("changes nothing if it is %s", (_why, existing) => {
    const { board, comparison } = reportView(smallRun([["study.existingOption", existing]]));
    expect(board.increment).toBeUndefined();
    expect(comparison.increments).toBeUndefined();
    expect(comparison.balance).toBeDefined();
  });

  it("says what a cheaper option gives up", () => {
    const { board, comparison } = reportView(
      smallRun([
        ["study.existingOption", "full-season"],
        ["study.requestedOption", "weekends"],
      ]),
    );
    expect(board.increment).toMatch(
      /1,880 fewer staff hours a year and, over 30 years, has a net (benefit|cost) of /,
    );
    // What is saved, a negative cost, and what is given up, negative damage avoided, make up the net benefit.
    const cells = comparison.increments?.rows.map(textOf).find(([name]) => name === "Weekend stations");
    const [cost = 0, avoided = 0, net = 0] = (cells ?? []).slice(3, 6).map((text) => amount(text));
    expect([cost, avoided].every((each) => each < 0)).toBe(true);
    expect(Math.abs(avoided - cost - net)).toBeLessThan(6000);
  });

  it("is left out, with the fees, for a lake that is infested", () => {
    const { board, comparison, program } = reportView(
      smallRun([
        ["study.existingOption", "weekends"],
        ["lake.infestedSince", 2024],
      ]),
    );
    expect(board.increment).toBeUndefined();
    expect([comparison.increments, comparison.unitCosts, program.fees]).toEqual([
      undefined,
      undefined,
      undefined,
    ]);
    expect(comparison.feeNotes).toEqual([]);
  });
});
