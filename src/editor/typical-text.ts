import type { Assumption } from "../assumptions/entry.js";

/** Assumptions by id. */
export type TypicalEntries = ReadonlyMap<string, Pick<Assumption, "title" | "value" | "low" | "high">>;

/** Typical shares in words, as authors write shares: "coverage of a ramp locked outside hours 98 % (96 to 99 %)". */
export const typicalText = (ids: readonly string[], entries: TypicalEntries | undefined): string =>
  ids
    .flatMap((id) => {
      const entry = entries?.get(id);
      return entry
        ? [`${entry.title ?? id} ${share(entry.value)} (${number(entry.low)} to ${share(entry.high)})`]
        : [];
    })
    .join("; ");

const number = (value: number) => (value * 100).toLocaleString("en-US", { maximumFractionDigits: 1 });
const share = (value: number) => `${number(value)} %`;
