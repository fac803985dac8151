import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { projectRoot } from "../../src/report/document/assets.js";
import { finestError } from "../../src/study/odds/odds-settings.js";
import type { estimated, Told } from "./long-run/told.js";

interface LongRun {
  readonly longRun: Told;
  readonly estimate: ReturnType<typeof estimated>;
}

const folder = join(projectRoot, "tests", "trials", "long-run");
const kept = readdirSync(folder).filter((name) => name.endsWith(".json"));

/** Standard errors by which the two may differ. */
const most = 3;
/** Of an interval of 95 %, with some twenty blocks. */
const halfWidth = 2.1;

describe.each(kept)("the odds held against a long plain run: %s", (name) => {
  const { longRun, estimate }: LongRun = JSON.parse(readFileSync(join(folder, name), "utf8"));

  it("have its mean net benefit, with an error as small as they promise", () => {
    const gap = Math.abs(estimate.netBenefit.value - longRun.netBenefit.value);
    const error = Math.hypot(estimate.netBenefit.standardError, longRun.netBenefit.standardError);
    expect(gap).toBeLessThan(most * error);
    const scale = Math.max(estimate.loss, Math.abs(estimate.netBenefit.value));
    expect(estimate.netBenefit.standardError).toBeLessThan(finestError * scale);
  });

  it.each(["cheaper", "worthIt", "everInfested"] as const)("have its chance to within a point: %s", (key) => {
    const { value, low, high } = estimate[key];
    const error = Math.hypot((high - low) / 2 / halfWidth, longRun[key].standardError);
    expect(Math.abs(value - longRun[key].value)).toBeLessThan(Math.min(0.01, Math.max(1e-4, most * error)));
  });

  it("have its 95th percentile within the limits of both", () => {
    expect(estimate.p95?.low).toBeLessThanOrEqual(longRun.p95.high);
    expect(estimate.p95?.high).toBeGreaterThanOrEqual(longRun.p95.low);
  });
});
