import type { Bounds } from "../model/register/expected.js";
import { QuantityError } from "../units/quantity.js";
import { parseSpread, type Spread } from "../units/spread.js";
import { boundsText, isWithin } from "./bounds.js";
import type { Assumption, AssumptionSet } from "./entry.js";
import { normalRange } from "./normal-range.js";
import { exchanged, type PriceFactor } from "./prices.js";
import { retired } from "./retired.js";
import { overrideDimensions } from "./units.js";

/** A study's own value for an assumption, with the reason that the report prints. */
interface Override {
  readonly id: string;
  readonly value: string | number;
  readonly reason: string;
}

export interface AppliedOverride {
  readonly entry: Assumption;
  readonly value: number;
  /** Absent where the study gives one value: then it is taken as certain. */
  readonly spread: Spread | undefined;
  readonly text: string;
  readonly reason: string;
  readonly outsideRange: boolean;
}

/** An override that cannot be used, for the study's list of problems. */
interface OverrideProblem {
  readonly index: number;
  readonly field: "id" | "value";
  readonly found: string;
  readonly allowed: string;
}

export function applyOverrides(
  set: AssumptionSet,
  overrides: readonly Override[],
  factorOf: PriceFactor = exchanged(1),
): { applied: AppliedOverride[]; problems: OverrideProblem[] } {
  const applied: AppliedOverride[] = [];
  const problems: OverrideProblem[] = [];
  overrides.forEach((override, index) => {
    const entry = set.entries.get(override.id);
    if (!entry) {
      problems.push({ index, field: "id", found: shown(override.id), allowed: idsAllowed(set, override.id) });
      return;
    }
    try {
      applied.push(
        appliedTo(entry, override, {
          bounds: set.expected.get(entry.id)?.bounds ?? {},
          scale: factorOf(entry),
        }),
      );
    } catch (error) {
      if (!(error instanceof QuantityError)) throw error;
      problems.push({ index, field: "value", found: shown(String(override.value)), allowed: error.message });
    }
  });
  return { applied, problems };
}

const longestShown = 60;

const shown = (text: string): string =>
  text.length > longestShown ? `${text.slice(0, longestShown)}…` : text;

/** @param money.scale what a price of the files is multiplied by to be in the money of the study */
function appliedTo(
  entry: Assumption,
  override: Override,
  { bounds, scale }: { bounds: Bounds; scale: number },
): AppliedOverride {
  const { value, spread } = readValue(entry, override.value);
  const isAllowed = (each: number) => isWithin(each / scale, bounds);
  if (![value, ...endsOf(spread)].every(isAllowed)) throw new QuantityError(boundsText(bounds, entry.unit));
  if (spread && !isDrawnInside(spread, scale, bounds)) {
    throw new QuantityError(
      `${boundsText(bounds, entry.unit)}, also three standard deviations from the middle of a normal range`,
    );
  }
  return {
    entry,
    value,
    spread,
    text: String(override.value),
    reason: override.reason,
    outsideRange: value < entry.low * scale || value > entry.high * scale,
  };
}

function endsOf(spread: Spread | undefined): readonly number[] {
  if (spread === undefined) return [];
  return spread.kind === "discrete" ? spread.choices.map(({ value }) => value) : [spread.low, spread.high];
}

/** True where no value that is drawn meets a bound that none may meet; beyond others it is cut off. */
function isDrawnInside(spread: Spread, scale: number, { above, below }: Bounds): boolean {
  if (spread.kind !== "normal") return true;
  const { low, high } = normalRange(spread);
  return [low, high].every((each) => isWithin(each / scale, { above, below }));
}

function idsAllowed(set: AssumptionSet, id: string): string {
  const now = retired.get(id)?.now;
  if (now !== undefined) return `${now}, which is read in its place`;
  const family = id.split(".")[0];
  const known = [...set.entries.keys()].filter((key) => key.split(".")[0] === family);
  const near = known.length > 0 ? `, for instance ${known.slice(0, 4).join(", ")}` : "";
  return `an id from the assumptions${near}`;
}

function readValue(
  entry: Assumption,
  text: string | number,
): { readonly value: number; readonly spread: Spread | undefined } {
  const unit = overrideDimensions[entry.unit];
  if (unit && !("mayBeBare" in unit && isBare(text))) {
    const { value, spread } = parseSpread(text, unit.dimension);
    return { value: value * unit.perCoherent, spread: spread && scaled(spread, unit.perCoherent) };
  }
  if (!isBare(text)) throw new QuantityError("a bare number");
  return { value: Number(text), spread: undefined };
}

const isBare = (text: string | number): boolean =>
  String(text).trim() !== "" && Number.isFinite(Number(text));

function scaled(spread: Spread, factor: number): Spread {
  return spread.kind === "discrete"
    ? { ...spread, choices: spread.choices.map(({ value, share }) => ({ value: value * factor, share })) }
    : { ...spread, low: spread.low * factor, high: spread.high * factor };
}

/**
 * The reader that the model gets, which takes any text for an id: overrides first, then the file's value. Prices of the
 * files are turned into the money of the study.
 */
export function assumedFrom(
  set: AssumptionSet,
  applied: readonly AppliedOverride[],
  factorOf: PriceFactor,
): (id: string) => number {
  const values = new Map<string, number>();
  for (const [id, entry] of set.entries) {
    values.set(id, entry.value * factorOf(entry));
  }
  for (const { entry, value } of applied) values.set(entry.id, value);
  return (id) => {
    const value = values.get(id);
    if (value === undefined) throw new Error(`no assumption has the id ${id}`);
    return value;
  };
}
