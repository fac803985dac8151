import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { futuresPerBlock } from "../../src/model/futures/draw-plan.js";
import { projectRoot } from "../../src/project-root.js";
import { fewest } from "../report/drawn-odds.js";
import { assumptions, exampleDocument } from "../report/runs.js";
import { estimated, type Told } from "./long-run/told.js";

/** Standard errors by which the two may differ. */
const most = 3;
/** Of an interval of 95 %, in standard errors of four blocks (Student's t with three degrees of freedom, printed tables). */
const halfWidth = 3.182;

describe.each(["ninemoss", "sorrel-bend"] as const)("the odds of %s, as they are drawn today", (example) => {
  // Independent lakes, drawn by `npm run long-run`; after a change of the model that moves them, draw them anew.
  const file = join(projectRoot, "tests", "trials", "long-run", `${example}.json`);
  const { longRun }: { readonly longRun: Told } = JSON.parse(readFileSync(file, "utf8"));
  const document = exampleDocument(example);
  const { lakes: known } = fewest(document);
  const estimate = estimated(document, assumptions, { mostFutures: 4 * futuresPerBlock, known });

  it("have the mean net benefit of a long plain run", () => {
    const gap = Math.abs(estimate.netBenefit.value - longRun.netBenefit.value);
    expect(gap).toBeLessThan(
      most * Math.hypot(estimate.netBenefit.standardError, longRun.netBenefit.standardError),
    );
  });

  it.each(["cheaper", "everInfested"] as const)("have its chance: %s", (key) => {
    const { value, low, high } = estimate[key];
    const error = Math.hypot((high - low) / 2 / halfWidth, longRun[key].standardError);
    expect(Math.abs(value - longRun[key].value)).toBeLessThan(Math.max(1e-3, most * error));
  });
});
