import { type Expected, innerShare } from "../model/register/expected.js";

/** Typical values that forms offer beside a field and that the model never reads: a study enters its own. */
export const typicalAssumptions: Readonly<Record<string, Expected>> = {
  "typical.fouled-infested-water": innerShare,
  "typical.coverage-roadside": innerShare,
  "typical.coverage-locked-ramp": innerShare,
  "typical.sensitivity": innerShare,
  "typical.efficacy": innerShare,
};
