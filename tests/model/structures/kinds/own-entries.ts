import { compare } from "../../../../src/model/compare.js";
import type { AssumptionId } from "../../../../src/model/register/register.js";
import type { Structure } from "../../../../src/model/structures/kinds.js";
import { assumed } from "../../assumptions.js";
import { studyOf } from "../../study.js";

/** What a structure's own fields are held against; the lake stands at 90 m in January and February, else at 100 m. */
export function checksOf(structure: Structure) {
  const checks = compare(studyOf([structure]), assumed).entryChecks;
  const others = ["money", "boats"];
  const own = checks.filter(
    ({ at }) => !others.some((each) => each === at[0]) && at.at(-1) !== "launchesPerDay",
  );
  return own.map(({ at, what, measure, found, low, high }) => [at.at(-1), what, measure, found, low, high]);
}

export const rangeOf = ({ low, high }: Record<"low" | "high", AssumptionId>) => [assumed(low), assumed(high)];
