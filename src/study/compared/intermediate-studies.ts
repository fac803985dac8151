import { isBaseline, type OptionResults, optionResults } from "../../model/compare.js";
import { difference } from "../../model/increments.js";
import type { StudyInput } from "../../model/inputs.js";
import type { Money } from "../../model/money/decimal.js";
import { contradictions } from "../checks/consistency.js";
import { currencyProblems } from "../checks/consistency-currency.js";
import { soundParts } from "../checks/range-problems.js";
import { withRecords } from "../checks/with-records.js";
import { asWritten } from "../format/as-written.js";
import type { StudyDocument, WrittenStudy } from "../format/schema.js";
import { prepareStudy } from "../prepare/prepared.js";
import type { Judged } from "../reading/contradiction.js";
import { InputError, problemOf } from "../reading/problems.js";
import { type RecordReaders, recordReaders } from "../reading/record-readers.js";
import { type ComparedStudy, mixedAssumptions, mixedOverrides, ownOf } from "./assumption-differences.js";
import { mixture } from "./mixture.js";

/** Mixtures of two studies, by the places taken from the right one. */
export interface Between {
  /** Whether the mixture is consistent. */
  readonly isSound: (places: ReadonlySet<string>) => boolean;
  /** Results of a consistent mixture, by the exact model. */
  readonly worth: (places: ReadonlySet<string>) => Worth;
  /** Mixtures with equal keys share a lake, and are quicker asked for one after another. */
  readonly lakeKey: (places: ReadonlySet<string>) => string;
}

/** Present values of a study. */
interface Worth {
  /** Of the requested option; absent where none is asked for. */
  readonly netBenefit: Money | undefined;
  /** Expected cost of an infestation without a program. */
  readonly infestation: Money;
}

/** Parts of a study that do not affect the cost of an infestation. */
const besideLake = /^(boats|options|study)\//;

/**
 * @param all places that differ and affect figures; a mixture with all of them is the right study
 * @param requested the option whose net benefit is wanted
 */
export function between(
  left: ComparedStudy,
  right: ComparedStudy,
  all: ReadonlySet<string>,
  requested: string | undefined,
): Between {
  const readers = recordReaders();
  const written = { left: asWritten(left.document), right: asWritten(right.document) };
  const studyAt = (places: ReadonlySet<string>): ComparedStudy => {
    if (places.size === 0) return left;
    if (places.size === all.size) return right;
    const takesRight = (place: string) => places.has(place);
    const mixed = {
      ...mixture(written.left, written.right, takesRight),
      overrides: mixedOverrides(ownOf(left), ownOf(right), takesRight),
    };
    return {
      document: readMixture(mixed, readers),
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
      places.size === 0 || places.size === all.size || canBePrepared(() => studyAt(places)),
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

/** Input with only the requested option, the baseline, and the schedules they follow. */
function withOption(input: StudyInput, id: string | undefined): StudyInput {
  const options = input.options.filter((option) => isBaseline(option) || option.id === id);
  const followed = new Set(options.map(({ schedule }) => schedule));
  const otherSchedules = input.lake.otherSchedules.filter((schedule) => followed.has(schedule.id));
  return { ...input, options, lake: { ...input.lake, otherSchedules } };
}

/** @throws InputError if the mixture contradicts itself */
function readMixture(mixed: WrittenStudy, readers: RecordReaders): StudyDocument {
  const found = [...contradictions(soundParts(mixed), readers), ...currencyProblems(mixed)];
  const read: Judged<StudyDocument> = found.length > 0 ? { problems: found } : withRecords(mixed, readers);
  if (!read.problems) return read.sound;
  throw new InputError(
    mixed.study.name,
    read.problems.map((each) => problemOf(each, mixed)),
  );
}

function canBePrepared(studyAt: () => ComparedStudy): boolean {
  try {
    const { document, assumptions } = studyAt();
    prepareStudy(document, assumptions);
    return true;
  } catch (error) {
    if (error instanceof InputError) return false;
    throw error;
  }
}
