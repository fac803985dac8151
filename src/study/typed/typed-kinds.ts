import type { typedAssumptions } from "../../model/register/typed.js";
import type { Dimension } from "../../units/dimension.js";
import { type DimensionName, dimensions } from "../../units/dimensions.js";

/** The assumption that says how far a quantity may be off that its author typed as one number, by what it is. */
export type TypedId = keyof typeof typedAssumptions;

/** A place in a study, its rows written as stars: "options/*" + "/steps/deterrence". */
const placeOf = (path: readonly PropertyKey[]) =>
  path.map((key) => (typeof key === "number" ? "*" : String(key))).join("/");

/** What is not off: choices of policy, limits, dates, levels, shares that make up a whole, and evidence. */
const chosen = [
  /^(study|money|report|overrides|search)\//,
  /^lake\/(maximumElevation|minimumElevation|storageTable|drawdown|record|otherSchedules|humidity|infested)/,
  /(Limit|\/angle|\/slope|\/roughness|\/launchFee|\/velocity)$/,
  /\/(curve|bearer|pinned)\//,
  /^boats\/(classes\/\*\/share|classes\/\*\/fouled\/|sites|traffic|seasons|cleanPeriods|chance\/(?!ownRate))/,
  /^options\/\*\/(fees|afterInfestation|rampUp|station\/target|monitoring|open|otherRevenue)/,
  /^options\/\*\/steps\/(hold|refusal|washedAnyway|falseAlarm)/,
  /^options\/\*\/demandLoss\/fee$/,
];

/** Places that say more than their dimension. */
const byPlace: ReadonlyArray<readonly [RegExp, TypedId]> = [
  [/^options\/\*\/steps\/deterrence$/, "typed.deterrence"],
  [/^options\/\*\/steps\//, "typed.effect"],
  [/^options\/\*\/response\/chance$/, "typed.effect"],
  [/^boats\/classes\/\*\/living$/, "typed.effect"],
  [/^boats\/classes\/\*\/fouled$/, "typed.chance"],
];

const byDimension: Partial<Record<DimensionName, TypedId>> = {
  count: "typed.count",
  share: "typed.share",
  yearlyShare: "typed.chance",
  flow: "typed.flow",
  concentration: "typed.water",
  conductivity: "typed.water",
  salinity: "typed.water",
  temperature: "typed.temperature",
  hours: "typed.time",
  shortTime: "typed.time",
  duration: "typed.time",
  length: "typed.dimension",
  smallLength: "typed.dimension",
  area: "typed.dimension",
  volume: "typed.dimension",
};

/** Which assumption tells how far a quantity at a place may be off; undefined for what is chosen or known. */
export function typedIdOf(path: readonly PropertyKey[], dimension: DimensionName): TypedId | undefined {
  const place = placeOf(path);
  if (chosen.some((pattern) => pattern.test(place))) return undefined;
  const found = byPlace.find(([pattern]) => pattern.test(place));
  if (found) return found[1];
  const { money }: Dimension = dimensions[dimension];
  return money ? "typed.price" : byDimension[dimension];
}

/** Effects and chances are never known for certain: the answer turns on them. */
export const alwaysVaries = (id: TypedId): boolean =>
  id === "typed.effect" || id === "typed.deterrence" || id === "typed.chance";
