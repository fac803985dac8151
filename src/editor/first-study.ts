import { stringify } from "yaml";
import type { ShortFacts } from "../study/short/facts-schema.js";
import type { TypicalValues } from "../study/short/filling.js";
import { fullStudy } from "../study/short/full-study.js";

/** The text of a full study from a few facts. @param today YYYY-MM-DD */
export const firstStudy = (facts: ShortFacts, values: TypicalValues, today: string): string =>
  stringify(fullStudy(facts, values, today), { lineWidth: 0 });
