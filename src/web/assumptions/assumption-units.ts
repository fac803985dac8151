import type { Studies } from "../../app/studies.js";
import type { StudyEntry } from "../../app/study-entry.js";
import type { Assumption, AssumptionSet } from "../../assumptions/entry.js";
import { applyOverrides } from "../../assumptions/override.js";
import { exchanged } from "../../assumptions/prices.js";
import { draftOf } from "../../editor/draft.js";
import type { OwnValue } from "../../editor/own-value.js";
import { formatter } from "../../report/words/format.js";
import { ownIn, type StudyUnits } from "../../report/words/usual-and-own.js";
import { studyPrices } from "../../study/prepare/prices.js";
import { InputError } from "../../study/reading/problems.js";

/** The units and the money of a study; of one that cannot be read yet its units, and dollars as files state them. */
export function unitsOf(entry: StudyEntry, studies: Studies): StudyUnits {
  try {
    const { money, study } = studies.document(entry);
    const { factorOf } = studyPrices(money, studies.assumptions).prices;
    return { format: formatter(money.currency, study.units), factorOf };
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    const { system } = draftOf(entry.text, entry.fileName).writing;
    return { format: formatter("USD", system), factorOf: exchanged(1) };
  }
}

/** An own value in the study's units; as typed where it cannot be used. */
export function ownShown(
  { id }: Pick<Assumption, "id">,
  own: OwnValue,
  assumptions: AssumptionSet,
  units: StudyUnits,
): string {
  const [applied] = applyOverrides(assumptions, [{ id, ...own }], units.factorOf).applied;
  return applied ? ownIn(applied, units) : own.value;
}
