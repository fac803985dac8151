import { isBaseline, type OptionResults, optionResults } from "../../model/compare.js";
import { difference } from "../../model/increments.js";
import type { StudyInput } from "../../model/inputs.js";
import type { Money } from "../../model/money/decimal.js";
import { contradictions } from "../checks/consistency.js";
import { currencyProblems } from "../checks/consistency-currency.js";
import { soundParts } from "../checks/range-problems.js";
import type { PreparedStudy } from "../prepare/prepared.js";
import { prepareStudy } from "../prepare/prepared.js";
import { InputError } from "../reading/problems.js";
import { type ComparedStudy, mixedAssumptions, mixedOverrides } from "./assumption-differences.js";
import { mixture } from "./mixture.js";

/** Studies between two, by the places that are taken from the right one. */
export interface Between {
  /** Whether such a study says nothing against itself. */
  readonly isSound: (places: ReadonlySet<string>) => boolean;
  /** What comes out of such a study, which is sound, by the exact model. */
  readonly worth: (places: ReadonlySet<string>) => Worth;
  /** Studies with the same key have the same lake: asked for one after the other, they are quicker. */
  readonly lakeKey: (places: ReadonlySet<string>) => string;
}

/** Present values of a study. */
interface Worth {
  /** Of the requested option; absent where none is asked for. */
  readonly netBenefit: Money | undefined;
  /** Expected cost of an infestation without a program. */
  readonly infestation: Money;
}

/** Parts of a study that leave alone what an infestation costs the lake. */
const besideLake = /^(boats|options|study)\//;

/**
 * @param all places that differ and move figures: with all of them the study is the right one itself
 * @param requested the option whose net benefit is asked for
 */
export function between(
  left: ComparedStudy,
  right: ComparedStudy,
  all: ReadonlySet<string>,
  requested: string | undefined,
): Between {
  const studyAt = (places: ReadonlySet<string>): ComparedStudy => {
    if (places.size === 0) return left;
    if (places.size === all.size) return right;
    const takesRight = (place: string) => places.has(place);
    const document = mixture(left.document, right.document, takesRight);
    return {
      document: {
        ...document,
        overrides: mixedOverrides(left.document.overrides, right.document.overrides, takesRight),
      },
      assumptions: mixedAssumptions(left.assumptions, right.assumptions, takesRight),
    };
  };
  const lakeKey = (places: ReadonlySet<string>) =>
    [...places]
      .filter((place) => !besideLake.test(place))
      .sort()
      .join("\n");
  let known: { readonly key: string; readonly results: OptionResults } | undefined;
  return {
    lakeKey,
    isSound: (places) =>
      places.size === 0 || places.size === all.size || prepared(studyAt(places)) !== undefined,
    worth: (places) => {
      const { document, assumptions } = studyAt(places);
      const { input, assumed } = prepareStudy(document, assumptions);
      const key = lakeKey(places);
      const lake = known?.key === key ? { ...known.results, ...known.results.settings } : undefined;
      const results = optionResults(withOption(input, requested), assumed, lake);
      known = { key, results };
      const result = results.results.find(({ option }) => option.id === requested);
      return {
        netBenefit: result && difference(result, results.baseline).netBenefit,
        infestation: results.baseline.presentValue.infestation,
      };
    },
  };
}

/** Only the option that is asked for, beside that which does nothing, and the schedule that it follows. */
function withOption(input: StudyInput, id: string | undefined): StudyInput {
  const options = input.options.filter((option) => isBaseline(option) || option.id === id);
  const followed = new Set(options.map(({ schedule }) => schedule));
  const otherSchedules = input.lake.otherSchedules.filter((schedule) => followed.has(schedule.id));
  return { ...input, options, lake: { ...input.lake, otherSchedules } };
}

/** A study made ready for the model; undefined for one that contradicts itself. */
function prepared({ document, assumptions }: ComparedStudy): PreparedStudy | undefined {
  if (contradictions(soundParts(document)).length + currencyProblems(document).length > 0) return undefined;
  try {
    return prepareStudy(document, assumptions);
  } catch (error) {
    if (error instanceof InputError) return undefined;
    throw error;
  }
}
