import { type Expected, innerShare, inUnit } from "../model/register/expected.js";

const price = inUnit("$")({ from: 0 });

/** Typical values that forms offer beside a field and that the model never reads: a study enters its own. */
export const typicalAssumptions: Readonly<Record<string, Expected>> = {
  "typical.fouled-infested-water": innerShare,
  "typical.coverage-roadside": innerShare,
  "typical.coverage-locked-ramp": innerShare,
  "typical.sensitivity": innerShare,
  "typical.efficacy": innerShare,
  "typical.larvae-sample": price,
  "typical.dna-sample": price,
  "typical.survey-crew-day": price,
  "typical.dive-crew-day": price,
  "typical.watch-year": price,
  "typical.clean-years": inUnit("yr")({ above: 0 }),
};
