import type { LevelRecord } from "../reading/levels/level-record.js";
import type { SeasonLog } from "../reading/season-log.js";
import type { TrafficCounts } from "../reading/traffic-counts.js";
import type { BoatsDocument } from "./boats-schema.js";
import type { RecordDocument, ScheduleDocument } from "./schedule-schema.js";
import type { DayTypeDocument, TrafficDocument } from "./traffic-schema.js";

/** A record of levels with its parsed content. */
export type ReadRecord = RecordDocument & { readonly levels: LevelRecord };

/** A lake or schedule with its record, if any, parsed. */
export type WithLevels<Schedule extends ScheduleDocument> = Omit<Schedule, "record"> & {
  readonly record?: ReadRecord | undefined;
};

/** A lake with all its records parsed. */
export type ReadLake<
  Lake extends ScheduleDocument & { readonly otherSchedules: readonly ScheduleDocument[] },
> = Omit<WithLevels<Lake>, "otherSchedules"> & {
  readonly otherSchedules: WithLevels<Lake["otherSchedules"][number]>[];
};

/** Traffic with its day types, or with its counts parsed. */
export type ReadTraffic = Omit<TrafficDocument, "dayTypes"> &
  (
    | { readonly dayTypes: DayTypeDocument[]; readonly counts?: undefined }
    | { readonly dayTypes?: undefined; readonly counts: TrafficCounts }
  );

type ReadSeasons = NonNullable<BoatsDocument["seasons"]> & { readonly log: SeasonLog };

/** Boats with their records parsed. */
export type ReadBoats = Omit<BoatsDocument, "seasons" | "traffic"> & {
  readonly seasons?: ReadSeasons | undefined;
  readonly traffic?: ReadTraffic | undefined;
};
