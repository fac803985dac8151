import type { Monitoring } from "../../model/inputs.js";
import type { SampleKind } from "../../model/risk/detection.js";
import type { TracedOption } from "../../study/traced/traced-option.js";
import { oneDecimal, percent } from "../words/format.js";

const kindNames: Record<SampleKind, readonly [one: string, several: string]> = {
  planktonTows: ["plankton tow", "plankton tows"],
  settlementPlates: ["settlement plate", "settlement plates"],
  searches: ["day of searching", "days of searching"],
  ednaSamples: ["eDNA sample", "eDNA samples"],
};

/** What is done each year to notice mussels. */
export function watchText(monitoring: Monitoring | undefined): string {
  if (monitoring === undefined) return "detected at once";
  const { noticedWithin } = monitoring;
  if (noticedWithin) {
    const last = noticedWithin.length;
    return `detected within ${last === 1 ? "a year" : `${last} years`}: ${percent(noticedWithin.at(-1) ?? 0)}`;
  }
  const kinds = Object.keys(kindNames) as SampleKind[];
  const taken = kinds.flatMap((kind) => {
    const count = monitoring[kind] ?? 0;
    return count > 0 ? [`${count} ${kindNames[kind][count === 1 ? 0 : 1]}`] : [];
  });
  return taken.length === 0 ? "nothing: detected by the first harm" : taken.join(", ");
}

/** Mean time until mussels are noticed, in whole years that pass before. */
export function yearsUnnoticed({ meanYearsUnnoticed: delay }: TracedOption): string {
  if (delay === 0) return "at once";
  return delay < atLeast ? "within weeks" : `after ${oneDecimal(delay)} years`;
}

const atLeast = 0.05;
