import type { ProgramOption } from "../../model/inputs.js";
import { hoursPerDay } from "../../model/lake/calendar.js";
import type { StudyDocument } from "../format/schema.js";
import type { SearchDocument, variable } from "../format/search-schema.js";
import { hourOf } from "../prepare/traffic.js";

/** What a search may vary and what binds it, with what follows where the study says nothing. */
export interface SearchRules {
  /** Place of the option that programs start from. */
  readonly base: number;
  readonly varies: (what: (typeof variable)[number]) => boolean;
  readonly sites: ReadonlySet<string>;
  readonly dayTypes: ReadonlySet<string>;
  readonly earliest: number;
  readonly latest: number;
  readonly mostHours: number;
  readonly longestWait: number | undefined;
  readonly budget: number | undefined;
  readonly staffHours: number | undefined;
  readonly chance: number | undefined;
  readonly stated: SearchDocument | undefined;
}

/** How much earlier and later than any option's stations a search may open them, where the study sets no hours. */
const hoursAround = 2;

/** Absent where no option has steps to start from. */
export function searchRules({ study, options, boats, search }: StudyDocument): SearchRules | undefined {
  const wanted = search?.from ?? study.requestedOption;
  const named = options.findIndex(({ id, steps }) => id === wanted && steps !== undefined);
  const base = named >= 0 ? named : options.findIndex(({ steps }) => steps !== undefined);
  const option = options[base];
  if (!option) return undefined;
  const open = options.flatMap((each) => each.open ?? []);
  const typedSites = new Set((option.open ?? []).flatMap(({ sites }) => sites ?? siteIds(boats)));
  const hours = open.flatMap(({ from, to }) => [hourOf(from), hourOf(to)]);
  return {
    base,
    varies: (what) => search?.vary?.includes(what) ?? true,
    sites: new Set(search?.sites ?? typedSites),
    dayTypes: new Set(search?.dayTypes ?? dayTypeIds(option)),
    earliest: search?.earliest ?? Math.max(0, Math.floor(Math.min(...hours)) - hoursAround),
    latest: search?.latest ?? Math.min(hoursPerDay, Math.ceil(Math.max(...hours)) + hoursAround),
    mostHours: search?.mostHours ?? hoursPerDay,
    longestWait: search?.longestWait?.value,
    budget: search?.budget?.value,
    staffHours: search?.staffHours,
    chance: search?.chance?.value,
    stated: search,
  };
}

const wholeLake = "lake";

const siteIds = ({ sites }: StudyDocument["boats"]) => sites?.map(({ id }) => id) ?? [wholeLake];

function dayTypeIds({ hours }: StudyDocument["options"][number]): string[] {
  const { dayTypes, counts } = hours?.traffic ?? {};
  return (dayTypes ?? counts?.dayTypes ?? []).map(({ id }) => id);
}

/** Whether the option's stations pass some boats with a seal. */
export const hasSeals = ({ steps }: ProgramOption): boolean => (steps?.seals.length ?? 0) > 0;
