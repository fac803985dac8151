import { type LevelReading, type RecordSettings, readLevelRecord } from "./levels/level-record.js";
import { readSeasonLog, type SeasonReading } from "./season-log.js";
import { type CountsReading, type CountsSettings, readTrafficCounts } from "./traffic-counts.js";

/** Parsers of a study's records. */
export interface RecordReaders {
  readonly levels: (csv: string, settings: RecordSettings) => LevelReading;
  readonly seasons: (csv: string, classIds: readonly string[]) => SeasonReading;
  readonly counts: (csv: string, settings: CountsSettings) => CountsReading;
}

const readersOfTexts: RecordReaders = {
  levels: readLevelRecord,
  seasons: readSeasonLog,
  counts: readTrafficCounts,
};

/** Readers that parse each text only once for the same settings. */
export const recordReaders = (readers = readersOfTexts): RecordReaders => ({
  levels: readingOnce(readers.levels),
  seasons: readingOnce(readers.seasons),
  counts: readingOnce(readers.counts),
});

function readingOnce<Settings, Reading>(read: (csv: string, settings: Settings) => Reading) {
  const known = new Map<string, Map<string, Reading>>();
  return (csv: string, settings: Settings): Reading => {
    const ofText = known.get(csv) ?? new Map<string, Reading>();
    known.set(csv, ofText);
    const key = JSON.stringify(settings);
    const reading = ofText.get(key) ?? read(csv, settings);
    ofText.set(key, reading);
    return reading;
  };
}
