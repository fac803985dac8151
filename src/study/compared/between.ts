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
  const readers = recordReaders();
  const written = { left: asWritten(left.document), right: asWritten(right.document) };
  const studyAt = (places: ReadonlySet<string>): ComparedStudy => {
    if (places.size === 0) return left;
    if (places.size === all.size) return right;
    const takesRight = (place: string) => places.has(place);
    const mixed = {
      ...mixture(written.left, written.right, takesRight),
      overrides: mixedOverrides(left.document.overrides, right.document.overrides, takesRight),
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

/** Only the option that is asked for, beside that which does nothing, and the schedule that it follows. */
function withOption(input: StudyInput, id: string | undefined): StudyInput {
  const options = input.options.filter((option) => isBaseline(option) || option.id === id);
  const followed = new Set(options.map(({ schedule }) => schedule));
  const otherSchedules = input.lake.otherSchedules.filter((schedule) => followed.has(schedule.id));
  return { ...input, options, lake: { ...input.lake, otherSchedules } };
}

/** @throws InputError where the mixture contradicts itself */
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
