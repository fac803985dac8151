import { type Staffing, type StaffingInput, staffing } from "../model/program/staffing.js";
import type { StudyDocument } from "./schema.js";
import type { StationDocument } from "./staffing-schema.js";

/** An option's station: what was asked, and the inspectors that it needs. */
export interface StationRun {
  readonly optionId: string;
  readonly input: StaffingInput;
  readonly staffing: Staffing;
}

/** Few enough days to keep a report quick; always the same seed, so that a study always prints the same figures. */
const sampling = { replications: 100, seed: 1 };

/** The stations of a study that was checked, in the order of its options. */
export function staffStations({ options }: StudyDocument): StationRun[] {
  return options.flatMap(({ id, station }) => {
    if (!station) return [];
    const input = staffingInput(station);
    return [{ optionId: id, input, staffing: staffing(input) }];
  });
}

function staffingInput({ dayTypes, service, target, mostInspectors, wage, loading }: StationDocument) {
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
    sampling,
  };
}
