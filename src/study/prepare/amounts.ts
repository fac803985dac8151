import { AmountError } from "../../model/money/line.js";
import type { StudyDocument } from "../format/schema.js";
import { InputError, pathText } from "../reading/problems.js";

/**
 * Runs a computation of the model on a study.
 * @throws InputError naming the structure or option of an absurdly large amount
 */
export function tellingAmounts<Result>(document: StudyDocument, work: () => Result): Result {
  try {
    return work();
  } catch (error) {
    if (!(error instanceof AmountError)) throw error;
    const at = placeOf(error.structure, document);
    throw new InputError(document.study.name, [
      {
        path: pathText(at, document),
        at,
        found: `${error.amount} for "${error.what}" in one year`,
        allowed: "amounts of up to 90,000,000,000,000",
        remedy:
          "Look there for a value that is too large or too small by far, at an end of a range too, or for a wrong unit.",
      },
    ]);
  }
}

function placeOf(id: string, { structures, options }: StudyDocument): PropertyKey[] {
  const structure = structures.findIndex((each) => each.id === id);
  if (structure >= 0) return ["structures", structure];
  const option = options.findIndex((each) => each.id === id);
  return option >= 0 ? ["options", option] : [];
}
