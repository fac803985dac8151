import { describe, expect, it } from "vitest";
import { comparisonText } from "../../src/cli/comparison-text.js";
import { plainForms } from "../../src/forms/forms.js";
import { once } from "../../src/model/computed-once.js";
import { balanceLine } from "../../src/report/board/balance-line.js";
import { renderReport } from "../../src/report/document/html.js";
import { reportView } from "../../src/report/document/report-view.js";
import type { StudyRun } from "../../src/study/prepare/compute.js";
import { exampleDocument, valueAt } from "../study/example.js";
import { editedRun } from "./edited.js";

const intake = valueAt(exampleDocument(), "structures[city-intake]");
const origin = "invented";
const monitoring = { noticedWithin: ["30 %", "60 %"], origin };
const none = { id: "none", name: "No program", monitoring, afterInfestation: { share: "0 %" } };

/** Steps that stop many fouled boats, or none. */
const steps = (share: string) => ({
  ...{ coverage: share, declaration: share, quickCheck: share, inspection: share, hotWash: share },
  ...{ deterrence: "0 %", origin },
});
/** Attempts that cost much and never succeed: their cost is part of that of an infestation. */
const vain = { name: "Vain", cost: "$5,000,000", chance: "0 %", latestYear: 30, cautions: "none", origin };

/** What comes in of the 50,000 a year that an option costs: the rest is what it adds to doing nothing. */
const incomes = { negative: "$114,100/yr", nothing: "$50,000/yr", tiny: "$49,999.80/yr", more: "$0/yr" };
const effects = {
  negative: { steps: steps("0 %"), response: vain },
  nothing: { steps: steps("0 %") },
  more: { steps: steps("80 %") },
};

type Cost = keyof typeof incomes;
type Effect = keyof typeof effects;

function runOf(cost: Cost, effect: Effect): StudyRun {
  const option = {
    ...{ id: "asked", name: "Stations", monitoring, afterInfestation: { share: "0 %" } },
    ...effects[effect],
    yearly: [{ name: "All of it", cost: "$50,000/yr", origin }],
    otherRevenue: [{ name: "Grant", amount: incomes[cost], origin }],
  };
  const edits = [
    ["structures", [intake]],
    ["study.requestedOption", "asked"],
    ["options", [none]],
  ] as const;
  return editedRun(edits, option);
}

const grid = (["negative", "nothing", "tiny", "more"] as const).flatMap((cost) =>
  (["negative", "nothing", "more"] as const).map((effect) => ({ cost, effect, run: runOf(cost, effect) })),
);

const plain = (html: string) =>
  html
    .replace(/<(style|script)\b[\s\S]*?<\/\1>/g, " ")
    .replace(/<[^>]+>/g, " ")
    .replace(/\s+/g, " ");

/** What of a page matches, with a few words around it: pages are too long to be printed whole. */
const found = (page: string, words: string) =>
  [...page.matchAll(new RegExp(`.{0,40}(?:${words}).{0,40}`, "gi"))].map(([text]) => text);

/** What a board and the public read in sentences: the first page and the summary. */
async function pagesOf(run: StudyRun): Promise<string[]> {
  const forms = await plainForms({ run, printedOdds: undefined, edition: "" });
  const texts = forms.filter(({ path }) => path.endsWith(".html"));
  const { board, comparison } = reportView(run);
  const first = [board.question, board.answer, board.asked, ...board.changes, ...comparison.verdicts];
  const figures = board.figures.flatMap(({ label, value, note }) => [label, value, note]);
  const line = Object.values(balanceLine(run)).map((each) => JSON.stringify(each));
  return [
    [...first, ...figures, ...line].join(" "),
    ...texts.map(({ bytes }) => plain(new TextDecoder().decode(bytes))),
  ];
}

describe.each(grid)("a program of $cost added cost and $effect avoided loss", ({ cost, effect, run }) => {
  const { board, comparison } = reportView(run);
  const [option] = run.comparison.options;
  if (!option) throw new Error("no option");
  const pages = once(() => pagesOf(run));

  it("has the signs that it is meant to have", () => {
    const signs = { negative: -1, nothing: 0, tiny: 1, more: 1 };
    expect(Math.sign(option.addedProgramCost.toNumber())).toBe(signs[cost]);
    expect(Math.sign(option.avoidedLoss.toNumber())).toBe(signs[effect]);
  });

  it("is answered, asked for, judged and headed alike", () => {
    const isWorth = option.netBenefit.greaterThan(0);
    expect(board.pays).toBe(isWorth);
    expect(board.answer.startsWith("Yes")).toBe(isWorth && effect === "more");
    expect(board.answer.startsWith("It is worth it")).toBe(isWorth && effect !== "more");
    expect(board.asked.includes("is asked to approve")).toBe(isWorth);
    expect(comparison.verdicts[0]?.includes("“Stations” pays")).toBe(isWorth);
    expect(balanceLine(run).pays).toBe(isWorth);
    expect(balanceLine(run).answer.startsWith("Pays")).toBe(isWorth);
    if (isWorth) expect(board.changes.join(" ")).not.toMatch(/make this option pay|would make it pay/);
  });

  it("asks for no money where none is needed, and never for less than none", async () => {
    const isAsked = cost === "tiny" || cost === "more";
    expect(board.asked.includes("No money is asked for")).toBe(!isAsked);
    // By hand: 114,100 less 50,000.
    if (cost === "negative") expect(board.asked).toContain("a surplus of $64,100 a year");
    for (const page of [...(await pages()), comparisonText(run)])
      expect(found(page, "approve (about )?[-−]")).toEqual([]);
  });

  it("tells of an avoided loss only where there is one, and of none only where there is none", async () => {
    for (const page of await pages()) {
      if (effect === "more")
        expect(found(page, "avoids no |adds to the loss|at the rack, added")).toEqual([]);
      else expect(found(page, String.raw`avoids? (about )?\$`)).toEqual([]);
      if (effect === "more") expect(found(page, "No budget above zero")).toEqual([]);
    }
  });

  it("prints no ratio over next to nothing in a table or a verdict either", () => {
    const cell = comparison.balance?.rows[0]?.cells[4]?.text;
    expect(cell === "–").toBe(cost !== "more");
    expect(comparison.verdicts[0]?.includes("(ratio ")).toBe(cost === "more");
    const rates = comparison.rates?.rows[0]?.cells.filter((_, place) => place > 0 && place % 2 === 0);
    expect(rates?.every(({ text }) => (text === "–") === (cost !== "more"))).toBe(true);
  });

  it("has no ratio over nothing, and no amount with a minus, on any page", async () => {
    const ratio = board.figures.find(({ label }) => label === "Benefit–cost ratio");
    expect(ratio?.value === "no added cost").toBe(cost !== "more");
    expect(balanceLine(run).ratio === undefined).toBe(cost !== "more");
    for (const page of await pages()) {
      expect(found(page, String.raw`[-−]\$|\$[-−]|\bNaN\b|Infinity|undefined`)).toEqual([]);
      if (cost !== "more") expect(found(page, String.raw`each \$1 spent`)).toEqual([]);
    }
    for (const page of [plain(renderReport(run, { inline: false })), comparisonText(run)])
      expect(found(page, String.raw`\bNaN\b|Infinity|\bundefined\b|-\$0\b`)).toEqual([]);
    expect(comparisonText(run)).not.toContain("()");
  });
});
