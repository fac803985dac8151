import { fileURLToPath } from "node:url";
import { expect, it } from "vitest";
import { loadAssumptions } from "../../../src/assumptions/load.js";
import { lakesPerBlock } from "../../../src/model/futures/draw-plan.js";
import { drawnStudy } from "../../../src/study/odds/draws.js";
import { hydrologicYearId } from "../../../src/study/odds/odds.js";
import { sensitivityOf } from "../../../src/study/odds/sensitivity.js";
import { netBenefitsAt } from "../../../src/study/odds/sensitivity-points.js";
import { rankCorrelations } from "../../../src/study/odds/sensitivity-ranks.js";
import { comparedOptions } from "../../../src/study/odds/stop-drawing.js";
import { barWidth } from "../../../src/study/odds/tornado.js";
import { readStudyText } from "../../../src/study/reading/read.js";
import { exampleText } from "../example.js";

const assumptions = loadAssumptions(fileURLToPath(new URL("../../../assumptions", import.meta.url)));

it("what matters is told of all inputs by rank, and by bars of the first of these from points worked out in any order", async () => {
  const document = readStudyText(
    exampleText("ninemoss").replace("chance: { lakes: inspected }", "chance: { drivenBy: launches }"),
    "ninemoss.yaml",
  );
  const study = drawnStudy(document, assumptions, { seed: 4, sampling: "latin-hypercube" });
  const compared = comparedOptions(document);
  const benefits = Array.from({ length: 32 }, (_, lake) => lake).flatMap((lake) => {
    const { expected } = study.futures(Math.floor(lake / lakesPerBlock), lake % lakesPerBlock);
    const [without, own] = [expected[compared.baseline], expected[compared.requested]];
    if (!without || !own) throw new Error("no options to compare");
    return without.map((cost, future) => cost - (own[future] ?? Number.NaN));
  });
  const batches: number[] = [];
  const found = await sensitivityOf(
    study.plan,
    rankCorrelations(study.plan, Float64Array.from(benefits)),
    async (points) => {
      batches.push(points.length);
      const last = points.toReversed().map((point) => netBenefitsAt(study, compared, point));
      return last.reverse();
    },
    3,
  );

  // One lake for the own values and all inputs of chances, two for each of the first three inputs by rank that is of the
  // lake and for each group, and one for each of the record's 6 years.
  const first = found.ranks.slice(0, 3).map(({ id }) => id);
  const ofLake = study.inputs.filter(({ id, stage }) => stage === "lake" && first.includes(id)).length;
  const groups = assumptions.groups.filter(
    ({ members }) => study.inputs.filter(({ id }) => members.includes(id)).length > 1,
  );
  expect(batches[0]).toBe(1 + 2 * ofLake + 2 * groups.length + 6);
  expect(batches).toHaveLength(1);

  const single = found.tornado.filter(({ members }) => members === undefined);
  expect([...first, hydrologicYearId]).toEqual(expect.arrayContaining(single.map(({ id }) => id)));
  expect(single.length).toBeGreaterThan(0);
  expect(found.ranks).toHaveLength(study.inputs.length);
  const widths = found.tornado.map((bar) => barWidth(bar, found.netBenefit));
  expect(widths).toEqual(widths.toSorted((one, other) => other - one));

  // A program that avoids next to nothing nets what it costs, most of it wages, typed as one number.
  expect(found.ranks[0]?.id).toBe("typed/options/staff/Checkers/wage");
});
