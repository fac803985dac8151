import type { Assumption } from "../../assumptions/entry.js";
import type { AppliedOverride } from "../../assumptions/override.js";
import type { PriceFactor } from "../../assumptions/prices.js";
import { rangeText, statedNumber, unitText } from "./assumption-text.js";
import type { Formatter } from "./format.js";
import { assumptionText } from "./input-text.js";

/** What a study's reader is told values of assumptions in: its units, and its money. */
export interface StudyUnits {
  readonly format: Formatter;
  readonly factorOf: PriceFactor;
}

const figures = { ofShares: 4, ofOthers: 4 };

/** An entry's usual value and range in a study's units, with what its file states where that is written otherwise. */
export function usualIn(entry: Assumption, { format, factorOf }: StudyUnits) {
  const { value, low, high, unit } = entry;
  const factor = factorOf(entry);
  const [middle = "", from = "", until = ""] = [value, low, high].map((each) =>
    assumptionText(unit, each * factor, format, figures),
  );
  const stated = `${statedNumber(value)} ${unitText(entry)}`.trim();
  return {
    value: middle,
    range: low === high ? "" : `${withoutUnit(from, until)}–${until}${drawnAs(entry)}`,
    stated: stated === middle ? "" : stated,
  };
}

/** What a range says beside its ends. */
const drawnAs = (entry: Assumption) => rangeText(entry).replace(/^[^;]*/, "");

/** The number alone of the low, where the high tells the unit; prices are told whole. */
function withoutUnit(low: string, high: string): string {
  const unit = /^[\d.,−]+( .*|%.*)$/.exec(high)?.[1] ?? "";
  return unit !== "" && low.endsWith(unit) ? low.slice(0, -unit.length) : low;
}

/** An own value in the study's units, with what was typed where that is written otherwise. */
export function ownIn({ entry, value, text }: AppliedOverride, { format }: StudyUnits): string {
  const shown = assumptionText(entry.unit, value, format, figures);
  return plain(shown) === plain(text) ? text : `${shown} (typed as ${text})`;
}

const plain = (text: string) =>
  text.replaceAll(/[\s,]/g, "").replaceAll("²", "2").replaceAll("³", "3").toLowerCase();
