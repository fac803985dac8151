import { contradictions } from "../checks/consistency.js";
import { currencyProblems } from "../checks/consistency-currency.js";
import { earlyShares } from "../checks/early-shares.js";
import { exactProblems } from "../checks/exact-problems.js";
import { rangeProblems, soundParts } from "../checks/range-problems.js";
import type { SoundParts } from "../checks/sound-parts.js";
import { earlyNeeds } from "../checks/structures/early-needs.js";
import { withRecords } from "../checks/with-records.js";
import { quantity } from "../format/fields.js";
import { type StudyDocument, studySchema } from "../format/schema.js";
import { earlyRecords } from "../records/early-records.js";
import { withKeptRecords } from "../records/kept-records.js";
import { characterProblems } from "./character-problems.js";
import { allowedCharacters } from "./characters.js";
import type { Contradiction } from "./contradiction.js";
import type { LevelRecord } from "./levels/level-record.js";
import { type Problem, problemOf, problemsOf, valueAt } from "./problems.js";
import { refuseRecordFiles } from "./record-files.js";
import { type RecordReaders, recordReaders } from "./record-readers.js";

/** What can be read of an unfinished study. */
export interface ReadDraft {
  /** Reasons why it is not a study yet; none if it is one. */
  readonly problems: readonly Problem[];
  /** The lake's own record; absent while unreadable. */
  readonly levels: LevelRecord | undefined;
}

/** Reads an unfinished study as far as possible. */
export function readDraft(document: unknown, readers = recordReaders()): ReadDraft {
  const whole = withKeptRecords(document);
  const first = [...whole.problems, ...refuseRecordFiles(document), ...characterProblems(document)];
  const { problems } = judged(whole.document, readers);
  return { problems: together(first, problems), levels: draftLevels(whole.document, readers) };
}

function draftLevels(document: unknown, readers: RecordReaders): LevelRecord | undefined {
  const at = (...path: readonly string[]) => valueAt(document, ["lake", ...path]);
  const csv = at("record", "csv");
  const gaps = at("record", "fillGapsUpTo");
  const minimumElevation = elevation.safeParse(at("minimumElevation")).data;
  const maximumElevation = elevation.safeParse(at("maximumElevation")).data;
  if (typeof csv !== "string") return undefined;
  const fillGapsUpTo = typeof gaps === "number" ? gaps : 0;
  return readers.levels(csv, { fillGapsUpTo, minimumElevation, maximumElevation }).record;
}

const elevation = quantity("elevation");

/** The study in a document, or its problems. */
export function judged(
  document: unknown,
  readers: RecordReaders,
): { study?: StudyDocument; problems: readonly Problem[] } {
  const inDocument = (each: Contradiction) => problemOf(each, document);
  const parsed = studySchema.safeParse(document);
  if (!parsed.success) {
    const parts = partsOf(document);
    const shares = earlyShares(document, parts);
    const early = [...earlyIn(document, parts), ...shares, ...earlyRecords(document, parts, readers)];
    const found = [...contradictions(parts, readers), ...early].map(inDocument);
    return { problems: [...problemsOf(parsed.error.issues, document), ...found] };
  }
  const written = parsed.data;
  const broken = contradictions(soundParts(written), readers);
  const found = [
    ...(broken.length > 0 ? broken : rangeProblems(written, readers)),
    ...exactProblems(written),
    ...currencyProblems(written),
  ];
  if (found.length > 0) return { problems: found.map(inDocument) };
  const read = withRecords(written, readers);
  return read.problems ? { problems: read.problems.map(inDocument) } : { study: read.sound, problems: [] };
}

/** All problems, without those of characters in texts that their fields refuse anyway. */
export function together(first: readonly Problem[], problems: readonly Problem[]): Problem[] {
  const refused = new Set(problems.map(({ path }) => path));
  const isTold = ({ path, allowed }: Problem) => allowed === allowedCharacters && refused.has(path);
  return [...first.filter((each) => !isTold(each)), ...problems];
}

/** What structures that cannot be read yet need by several of their fields. */
function earlyIn(document: unknown, { structures }: SoundParts): Contradiction[] {
  const list = valueAt(document, ["structures"]);
  const read = new Set(structures.map(({ index }) => index));
  return (Array.isArray(list) ? list : []).flatMap((item: unknown, index) =>
    read.has(index) ? [] : earlyNeeds(item, index),
  );
}

/** Well-formed parts of a broken document, so that their contradictions are reported too. */
function partsOf(document: unknown): SoundParts {
  if (typeof document !== "object" || document === null) return { structures: [] };
  const { shape } = studySchema;
  const section = (key: string): unknown => Reflect.get(document, key);
  const list = section("structures");
  const structures = (Array.isArray(list) ? list : []).flatMap((item: unknown, index) => {
    const parsed = shape.structures.element.safeParse(item);
    return parsed.success ? [{ index, value: parsed.data }] : [];
  });
  return {
    study: shape.study.safeParse(section("study")).data,
    lake: shape.lake.safeParse(section("lake")).data,
    report: shape.report.safeParse(section("report")).data,
    boats: shape.boats.safeParse(section("boats")).data,
    options: shape.options.safeParse(section("options")).data,
    money: shape.money.safeParse(section("money")).data,
    search: shape.search.safeParse(section("search")).data,
    overrides: shape.overrides.safeParse(section("overrides")).data,
    structures,
  };
}
