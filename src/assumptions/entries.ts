import { estimatedIds } from "../model/founding/estimated.js";
import type { PlanEntry } from "../model/structures/catalogue.js";
import { boundsText } from "./bounds.js";
import { type Assumption, idPattern, type Source } from "./entry.js";
import { type Expectation, expectations } from "./expectations.js";
import { evidenceFile } from "./founding/places.js";
import { type PlanCatalogue, plansFile, readPlans } from "./plans.js";
import { settled } from "./read-entry.js";
import { retired } from "./retired.js";
import { type HeldIds, type WrittenItem, type WrittenItems, writtenItems } from "./written-items.js";
import { type AssumptionFiles, readYaml } from "./yaml-file.js";

/** The assumptions of a folder, each in the unit that the model expects, with the plans that name some of them. */
interface Entries {
  readonly entries: ReadonlyMap<string, Assumption>;
  readonly expected: ReadonlyMap<string, Expectation>;
  readonly plans: readonly PlanEntry[];
  readonly ids: HeldIds;
}

/** What the files that list assumptions are read with. */
interface EntryReading {
  /** Names of these files. */
  readonly lists: readonly string[];
  readonly sources: ReadonlyMap<string, Source>;
  /** Entries in place of those that no file holds. */
  readonly inPlace: ReadonlyMap<string, Assumption> | undefined;
  /** Entries that are estimated from counts. */
  readonly estimated: readonly Assumption[];
}

/** Reads the files that list assumptions, and adds what is wrong with them to `problems`. */
export function readEntries(
  files: AssumptionFiles,
  { lists, sources, inPlace, estimated }: EntryReading,
  problems: string[],
): Entries {
  const written = writtenItems(files, lists, problems);
  const { ids } = written;
  const catalogue = readPlans(readYaml(files, plansFile, problems), ids, problems);
  const expected = expectations(catalogue.numbers, problems);
  const entries = new Map<string, Assumption>();
  for (const each of written.items) {
    const entry = settled(
      inPlace ? titled(each, inPlace) : each,
      expected.get(each.id ?? "") ?? retired.get(each.id ?? ""),
      sources,
      problems,
    );
    if (entry) entries.set(entry.id, entry);
  }
  for (const entry of estimated) entries.set(entry.id, entry);
  problems.push(
    ...repeated(written.items),
    ...unread(written.items, expected, catalogue),
    ...typedEstimates(written.items),
  );
  for (const absent of missing(written, expected)) {
    const entry = inPlace?.get(absent.id);
    if (entry) entries.set(entry.id, entry);
    else problems.push(absent.problem);
  }
  return { entries, expected, plans: catalogue.plans, ids: withEstimated(ids) };
}

/** An entry of an earlier version, which gave titles to some alone. */
const titled = (written: WrittenItem, later: ReadonlyMap<string, Assumption>): WrittenItem => ({
  ...written,
  item: { title: later.get(written.id ?? "")?.title ?? written.id, ...Object(written.item) },
});

const isEstimated = (id: string) => estimatedIds.some((estimated) => estimated === id);

const withEstimated = (ids: HeldIds): HeldIds => ({
  ...ids,
  has: (id) => ids.has(id) || isEstimated(id),
  list: [...ids.list, ...estimatedIds],
});

/** Entries of what is estimated from counts: two figures for one quantity. */
const typedEstimates = (items: readonly WrittenItem[]): string[] =>
  items.flatMap(({ file, id }) =>
    id !== undefined && isEstimated(id)
      ? [
          `${file}: ${id} is given as an entry; allowed: none, since it is estimated from the counts in ${evidenceFile}. Remove the entry; correct the counts there, or give the study its own value.`,
        ]
      : [],
  );

function repeated(items: readonly WrittenItem[]): string[] {
  const seen = new Set<string>();
  return items.flatMap(({ file, id }) => {
    if (id === undefined) return [];
    const isRepeated = seen.has(id);
    seen.add(id);
    return isRepeated ? [`${file}: ${id} stands here a second time. Keep one of the two.`] : [];
  });
}

/** Entries that neither the model nor a plan reads: a slip in the id, or a number that would change nothing. */
function unread(
  items: readonly WrittenItem[],
  expected: ReadonlyMap<string, Expectation>,
  { isWhole }: PlanCatalogue,
): string[] {
  if (!isWhole) return [];
  return items.flatMap(({ file, id }) =>
    id === undefined || !idPattern.test(id) || expected.has(id) || retired.has(id)
      ? []
      : [
          `${file}: ${id} is read by nothing; allowed: an id that the model reads, or that a plan of ${plansFile} names${nearest(id, expected)}. Correct the id or remove the entry.`,
        ],
  );
}

function nearest(id: string, expected: ReadonlyMap<string, Expectation>): string {
  const family = id.split(".")[0];
  const near = [...expected.keys()].filter((known) => known.split(".")[0] === family);
  return near.length === 0 ? "" : `, for instance ${near.slice(0, 4).join(", ")}`;
}

/** What the model reads and no file holds; the plans' numbers are told with the plans. */
function missing(
  { items, ids }: WrittenItems,
  expected: ReadonlyMap<string, Expectation>,
): { readonly id: string; readonly problem: string }[] {
  if (!ids.areAll) return [];
  return [...expected].flatMap(([id, { unit, bounds }]) => {
    if (ids.has(id) || isEstimated(id)) return [];
    const family = id.split(".")[0];
    const file = items.find((item) => item.id?.split(".")[0] === family)?.file ?? "the folder";
    const problem = `${file}: ${id} is missing, here and elsewhere; allowed: ${boundsText(bounds, unit)}, with the unit ${unit}. Add an entry for it.`;
    return [{ id, problem }];
  });
}
