import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { loadAssumptions } from "../../../src/assumptions/load.js";
import { at } from "../../../src/lists.js";
import { compare } from "../../../src/model/compare.js";
import type { StudyDocument } from "../../../src/study/format/schema.js";
import { drawnStudy } from "../../../src/study/odds/draws.js";
import { hydrologicYearId } from "../../../src/study/odds/odds.js";
import {
  atEnd,
  groupsPresent,
  ownValues,
  setOf,
  valueAtEnd,
} from "../../../src/study/odds/sensitivity-moves.js";
import { netBenefitsAt, netBenefitsOf, type RunPoints } from "../../../src/study/odds/sensitivity-points.js";
import { comparedOptions } from "../../../src/study/odds/stop-drawing.js";
import { barWidth, tornado } from "../../../src/study/odds/tornado.js";
import type { NamedInput } from "../../../src/study/odds/uncertain-inputs.js";
import { prepareStudy } from "../../../src/study/prepare/prepared.js";
import { toModel } from "../../../src/study/prepare/to-model.js";
import { rangedQuantities, withValues } from "../../../src/study/reading/ranged.js";
import { readStudyText } from "../../../src/study/reading/read.js";
import { type ExampleName, editedText, exampleText } from "../example.js";

const assumptions = loadAssumptions(fileURLToPath(new URL("../../../assumptions", import.meta.url)));

const uniform = (id: string, stage: NamedInput["stage"] = "lake"): NamedInput => ({
  id,
  name: id,
  stage,
  distribution: { kind: "uniform", low: 0, high: 10 },
});

/** Own values are 5; a is worth 3 each, b −1 each, a step below 4 costs 100, nothing reads idle. */
const toy: RunPoints = async (points) =>
  points.map(({ lake, chances }) =>
    chances.map((each) => {
      const value = (id: string) => each.get(id) ?? lake.get(id) ?? 5;
      return 3 * value("a") - value("b") - (value("step") < 4 ? 100 : 0);
    }),
  );

describe("bars of a sum with a step", () => {
  const inputs = [uniform("a"), uniform("b", "chances"), uniform("idle"), uniform("step")];

  it("are the differences at P10 and P90, widest first, without what nothing reads", async () => {
    // By hand: own 15 − 5 = 10; a at 1 and 9: −2 and 22; b at 1 and 9: 14 and 6; the step is low at 1 alone.
    const { netBenefit, bars } = await tornado(inputs, [], toy);
    expect(netBenefit).toBe(10);
    expect(
      bars.map(({ id, low, high }) => [id, low.input, low.netBenefit, high.input, high.netBenefit]),
    ).toEqual([
      ["step", 1, -90, 9, 10],
      ["a", 1, -2, 9, 22],
      ["b", 1, 14, 9, 6],
    ]);
    expect(bars.map((bar) => barWidth(bar, netBenefit))).toEqual([100, 24, 8]);
  });

  it("are those of groups, too", async () => {
    const groups = groupsPresent(inputs, [
      { id: "ab", name: "a and b", members: ["a", "b", "unused"] },
      { id: "one", name: "one that is used", members: ["idle", "unused"] },
    ]);
    const { bars } = await tornado(inputs, groups, toy);
    // a and b at 1: 3 − 1; at 9: 27 − 9.
    expect(bars).toMatchObject([
      { id: "step" },
      { id: "a" },
      { id: "ab", members: ["a", "b"], low: { netBenefit: 2 }, high: { netBenefit: 18 } },
      { id: "b" },
    ]);
  });

  it("of single values go from the least to the greatest, of operating years from the worst to the best", async () => {
    const discrete = (id: string, values: number[]): NamedInput => ({
      ...uniform(id),
      distribution: { kind: "discrete", values: values.map((value) => ({ value, weight: 1 })) },
    });
    const run: RunPoints = async (points) =>
      points.map(({ lake }) => [(lake.get("a") ?? 5) + at([10, 30, 0, 20], lake.get(hydrologicYearId) ?? 0)]);
    const { bars } = await tornado(
      [discrete("a", [7, 2, 4]), discrete(hydrologicYearId, [0, 1, 2, 3])],
      [],
      run,
    );
    expect(bars).toMatchObject([
      { id: hydrologicYearId, low: { input: 2, netBenefit: 5 }, high: { input: 1, netBenefit: 35 } },
      { id: "a", low: { input: 2, netBenefit: 12 }, high: { input: 7, netBenefit: 17 } },
    ]);
  });
});

function studied(document: StudyDocument) {
  const study = drawnStudy(document, assumptions, { seed: 1, sampling: "latin-hypercube" });
  const pair = comparedOptions(document);
  const run: RunPoints = async (points) => points.map((point) => netBenefitsAt(study, pair, point));
  return { ...study, run };
}

function comparedNetBenefit(document: StudyDocument, set = assumptions): number {
  const prepared = prepareStudy(document, set);
  // How the two ways to the chance weigh is worked out once, from the study's own values.
  const { estimate } = prepareStudy(document, assumptions);
  const { boats, options } = toModel(document, { ...prepared, estimate });
  const input = { ...prepared.input, boats, options };
  const found = compare(input, prepared.assumed).options.find(
    ({ result }) => result.option.id === document.study.requestedOption,
  );
  if (!found) throw new Error("no option requested");
  return found.netBenefit.toNumber();
}

/** Relative to the size of the amounts that the net benefit is a difference of. */
const expectSame = (found: number | undefined, expected: number, size: number) =>
  expect(Math.abs((found ?? Number.NaN) - expected) / size).toBeLessThan(1e-9);

const documents = new Map(
  (["sorrel-bend", "ninemoss"] as const).map((name: ExampleName) => [
    name,
    readStudyText(exampleText(name), `${name}.yaml`),
  ]),
);

describe.each([...documents])("the net benefit of %s", (_name, document) => {
  const { inputs, run } = studied(document);
  const size = Math.abs(comparedNetBenefit(document));
  const find = (id: string) => {
    const found = inputs.find((input) => input.id === id);
    if (!found) throw new Error(`${id} is not drawn`);
    return found;
  };

  it("with own values is that of the comparison", async () => {
    const [base] = await netBenefitsOf([ownValues], run);
    expectSame(base, comparedNetBenefit(document), size);
  });

  it("is the same with inputs set to their own values", async () => {
    const ids = ["growth.settlers-per-month", "arrival.founding-unknown", "arrival.other-share"];
    const own = setOf(ids.map((id) => [find(id), assumptions.entries.get(id)?.value ?? Number.NaN]));
    const [base = Number.NaN, moved] = await netBenefitsOf([ownValues, own], run);
    expectSame(moved, base, size);
  });

  it.each([
    ["growth.settlers-per-month", "high"],
    ["arrival.founding-unknown", "low"],
    ["arrival.other-share", "high"],
  ] as const)(
    "with %s at its %s end is that of a comparison with this value in the file",
    async (id, end) => {
      const input = find(id);
      const entry = assumptions.entries.get(id);
      if (!entry) throw new Error(`no ${id}`);
      const changed = { ...entry, value: valueAtEnd(input, end) };
      const [moved] = await netBenefitsOf([atEnd([input], end)], run);
      const expected = comparedNetBenefit(document, {
        ...assumptions,
        entries: new Map([...assumptions.entries, [id, changed]]),
      });
      expectSame(moved, expected, size);
    },
  );

  it("with a group at its high end is that of a comparison with all its members moved", async () => {
    const vigour = groupsPresent(inputs, assumptions.groups).filter(({ id }) => id === "mussel-vigour");
    const { bars } = await tornado([], vigour, run);
    const moved = (vigour[0]?.members ?? []).flatMap((member) => {
      const entry = assumptions.entries.get(member.id);
      return entry ? [[member.id, { ...entry, value: valueAtEnd(member, "high") }] as const] : [];
    });
    expect(moved.map(([id]) => id)).toEqual(bars[0]?.members);
    expect(moved).toHaveLength(4);
    const entries = new Map([...assumptions.entries, ...moved]);
    expectSame(bars[0]?.high.netBenefit, comparedNetBenefit(document, { ...assumptions, entries }), size);
  });
});

describe("quantities of the study with a range", () => {
  const document = readStudyText(
    editedText([
      ["structures[dock].replacementCost", "$900,000 to $1,200,000 to $1,600,000"],
      ["boats.otherWays[0].chance", "0.05 to 0.1 to 0.4 %/yr"],
    ]),
    "lake.yaml",
  );
  const { inputs, run } = studied(document);

  it.each(rangedQuantities(document))("$id moves as it does in the study itself", async ({ id, path }) => {
    const input = inputs.find((each) => each.id === id);
    if (!input) throw new Error(`${id} is not drawn`);
    const [base, moved] = await netBenefitsOf([ownValues, atEnd([input], "high")], run);
    const changed = withValues(document, [{ path, value: valueAtEnd(input, "high") }]);
    const expected = comparedNetBenefit(changed);
    expect(moved).not.toBe(base);
    expectSame(moved, expected, Math.abs(expected));
  });

  it("have names in words", () => {
    const names = inputs.filter(({ id }) => id.includes("/")).map(({ name }) => name);
    expect(names).toContain("replacement cost of Marina floating docks");
    expect(names).toContain("chance of Gear and aircraft");
  });
});
