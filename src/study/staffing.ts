import { type Staffing, type StaffingInput, staffing } from "../model/program/staffing.js";
import type { StudyDocument } from "./schema.js";
import type { StationDocument } from "./staffing-schema.js";

/** An option's station: what was asked, and the inspectors that it needs. */
export interface StationRun {
  readonly optionId: string;
  readonly input: StaffingInput;
  readonly staffing: Staffing;
}

/** Always the same, so that a study always prints the same figures. */
const seed = 1;
const mostDays = 100;
const fewestDays = 20;
/** Boats served, once for each number of inspectors, that a station may take: about a second. */
const mostServed = 10_000_000;

/** Days to draw: few enough to keep a report quick, the more so as a day of many boats says more by itself. */
function replicationsFor({ dayTypes, mostInspectors }: StationDocument): number {
  const boats = dayTypes
    .flatMap(({ launchesByHour }) => launchesByHour)
    .reduce((sum, launches) => sum + launches, 0);
  const affordable = Math.floor(mostServed / (boats * mostInspectors));
  return Math.min(mostDays, Math.max(fewestDays, affordable));
}

/** The stations of a study that was checked, in the order of its options. */
export function staffStations({ options }: StudyDocument): StationRun[] {
  return options.flatMap(({ id, station }) => {
    if (!station) return [];
    const input = staffingInput(station);
    return [{ optionId: id, input, staffing: staffing(input) }];
  });
}

function staffingInput(station: StationDocument): StaffingInput {
  const { dayTypes, service, target, mostInspectors, wage, loading } = station;
  return {
    dayTypes: dayTypes.map(({ id, name, daysPerYear, launchesByHour }) => ({
      id,
      name,
      daysPerYear,
      arrivalsByHour: launchesByHour,
    })),
    service: {
      quickCheckHours: service.quickCheck.value,
      fullInspectionHours: service.fullInspection.value,
      setAsideShare: service.setAsideShare.value,
      spread: service.spread,
    },
    target: { share: target.share.value, hours: target.wait.value },
    mostInspectors,
    wagePerHour: wage.value * (1 + loading.value),
    sampling: { replications: replicationsFor(station), seed },
  };
}
