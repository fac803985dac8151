import type { AppliedOverride } from "../../assumptions/override.js";
import type { Assumed } from "../../model/assumed.js";
import type { StudyInput } from "../../model/inputs.js";
import type { ClassChance } from "../../model/program/class-chances.js";
import type { StudyPrices } from "./prices.js";
import type { StudyTraffic } from "./traffic.js";

/** A study as the model takes it, with its overrides applied. */
export interface PreparedStudy {
  readonly input: StudyInput;
  readonly assumed: Assumed;
  readonly overrides: readonly AppliedOverride[];
  readonly prices: StudyPrices;
  readonly chances: readonly ClassChance[];
  readonly traffic: StudyTraffic | undefined;
  /** Ids of the assumptions behind the input itself. */
  readonly inputAssumptions: readonly string[];
}
