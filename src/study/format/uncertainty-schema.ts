import { z } from "zod";
import { futuresPerBlock } from "../../model/futures/draw-plan.js";
import {
  finestError,
  leastFutures,
  mostFutures,
  type OddsSettings,
  usualMostFutures,
  usualSeed,
} from "../odds/odds-settings.js";
import { quantity } from "./fields.js";

const written = (count: number) => count.toLocaleString("en-US");

const oneShare = (low: number, high: number) =>
  quantity("share")
    .refine(({ spread }) => spread === undefined, "one share without a range")
    .refine(
      ({ value }) => value >= low && value <= high,
      `a share from ${Number((low * 100).toFixed(3))} to ${Number((high * 100).toFixed(3))} %`,
    );

/** How many futures are drawn, and what is reported. */
export const uncertaintySchema = z.strictObject({
  seed: z
    .int("a whole number")
    .min(0, "a whole number from 0")
    .default(usualSeed)
    .meta({ description: "Another whole number gives other draws; the same gives the same figures" }),
  sampling: z
    .enum(["latin-hypercube", "sobol"])
    .default("latin-hypercube")
    .meta({ description: "How values are spread over their ranges" }),
  confidence: oneShare(0.5, 0.99)
    .prefault("80 %")
    .meta({ description: "Share of the futures in which the yearly budget is enough" }),
  precision: oneShare(0.001, 0.5)
    .prefault("5 %")
    .meta({
      description: `Drawing ends once the standard error of the requested option's mean net benefit is at most this share of it, and at most ${100 * finestError} % of what an infestation is expected to cost`,
    }),
  mostFutures: z
    .int("a whole number of futures")
    .min(leastFutures, `at least ${written(leastFutures)} futures`)
    .max(mostFutures, `at most ${written(mostFutures)} futures`)
    .default(usualMostFutures)
    .meta({
      description: `Drawing ends there at the latest; whole blocks of ${written(futuresPerBlock)} are drawn`,
    }),
});

/** A study's settings, with defaults for those it does not state. */
export function oddsSettings(stated: z.output<typeof uncertaintySchema> | undefined): OddsSettings {
  const settings = stated ?? uncertaintySchema.parse({});
  return { ...settings, confidence: settings.confidence.value, precision: settings.precision.value };
}
