import { sumOf } from "../../lists.js";
import type { Traffic } from "../../model/inputs.js";
import { type SiteDay, sealedShare, siteDays } from "../../model/program/site-days.js";
import { type Staffing, type StaffingInput, staffing } from "../../model/program/staffing.js";
import type { StudyDocument, WrittenStudy } from "../format/schema.js";
import type { StationDocument } from "../format/staffing-schema.js";
import { usualSeed } from "../odds/odds-settings.js";
import { withoutUnits } from "./to-model.js";
import { openingsOf } from "./traffic.js";

type OptionDocument = Pick<WrittenStudy["options"][number], "open" | "steps">;

/** An option's stations: the input, and the inspectors needed. */
export interface StationRun {
  readonly optionId: string;
  readonly input: StaffingInput;
  /** Days of each site, in the order of `staffing.dayTypes`. */
  readonly days: readonly SiteDay[];
  readonly staffing: Staffing;
}

const mostDays = 100;
const fewestDays = 20;
/** Most boats simulated per station, over all numbers of inspectors: about a second. */
const mostServed = 10_000_000;

/** Number of days to simulate: fewer for busy stations, whose days each say more, to keep reports quick. */
function replicationsFor(days: readonly SiteDay[], mostInspectors: number): number {
  const boats = sumOf(days.flatMap(({ arrivalsByHour }) => arrivalsByHour));
  const affordable = Math.floor(mostServed / (boats * mostInspectors));
  return Math.min(mostDays, Math.max(fewestDays, affordable));
}

/**
 * Stations of a study, in the order of its options.
 * @param traffic scaled to the launches of the year
 */
export function staffStations(
  { study, options, boats }: StudyDocument,
  traffic: Traffic | undefined,
): StationRun[] {
  if (!traffic) return [];
  const seed = study.uncertainty?.seed ?? usualSeed;
  return options.flatMap((option) => {
    if (!option.station) return [];
    const days = daysOfSites(option, boats.classes, traffic);
    const input = staffingInput(option.station, days, seed);
    return [{ optionId: option.id, input, days, staffing: staffing(input) }];
  });
}

/** Boats checked at an option's stations by site, day type and open hour; none without open hours. */
export function daysOfSites(
  { open, steps }: OptionDocument,
  classes: StudyDocument["boats"]["classes"],
  traffic: Traffic,
): SiteDay[] {
  if (!open || !steps) return [];
  const sealed = sealedShare(withoutUnits(classes), withoutUnits(steps.seals));
  return siteDays(traffic, openingsOf(open, traffic), 1 - sealed);
}

function staffingInput(station: StationDocument, days: readonly SiteDay[], seed: number): StaffingInput {
  const { service, target, mostInspectors, wage, loading } = station;
  return {
    dayTypes: days,
    service: {
      quickCheckHours: service.quickCheck.value,
      fullInspectionHours: service.fullInspection.value,
      setAsideShare: service.setAsideShare.value,
      spread: service.spread,
    },
    target: { share: target.share.value, hours: target.wait.value },
    mostInspectors,
    wagePerHour: wage.value * (1 + loading.value),
    sampling: { replications: replicationsFor(days, mostInspectors), seed },
  };
}
