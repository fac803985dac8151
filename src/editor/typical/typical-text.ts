import type { Assumption } from "../../assumptions/entry.js";

/** Assumptions by id. */
export type TypicalEntries = ReadonlyMap<
  string,
  Pick<Assumption, "title" | "unit" | "value" | "low" | "high">
>;

/**
 * Typical values in words, shares as authors write them: "coverage of a ramp locked outside hours 98 % (96 to 99 %)".
 */
export const typicalText = (ids: readonly string[], entries: TypicalEntries | undefined): string =>
  ids
    .flatMap((id) => {
      const entry = entries?.get(id);
      if (!entry) return [];
      const { scale, unit } = writtenIn(entry.unit);
      const number = (value: number) =>
        (value * scale).toLocaleString("en-US", { maximumSignificantDigits: 4 });
      const range = `(${number(entry.low)} to ${number(entry.high)}${unit})`;
      return [`${entry.title} ${number(entry.value)}${unit} ${range}`];
    })
    .join("; ");

/** Shares in percent, pure numbers without a unit. */
function writtenIn(unit: string): { readonly scale: number; readonly unit: string } {
  if (unit === "share") return { scale: 100, unit: " %" };
  return { scale: 1, unit: unit === "1" ? "" : ` ${unit}` };
}
