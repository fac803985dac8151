import type { LevelRecord } from "../reading/level-record.js";
import type { SeasonLog } from "../reading/season-log.js";
import type { TrafficCounts } from "../reading/traffic-counts.js";
import type { BoatsDocument } from "./boats-schema.js";
import type { RecordDocument, ScheduleDocument } from "./schedule-schema.js";
import type { DayTypeDocument, TrafficDocument } from "./traffic-schema.js";

/** A record of levels and what was read of it. */
export type ReadRecord = RecordDocument & { readonly levels: LevelRecord };

/** A lake or a schedule whose record, if it has one, was read. */
export type WithLevels<Schedule extends ScheduleDocument> = Omit<Schedule, "record"> & {
  readonly record?: ReadRecord | undefined;
};

/** A lake all of whose records were read. */
export type ReadLake<
  Lake extends ScheduleDocument & { readonly otherSchedules: readonly ScheduleDocument[] },
> = Omit<WithLevels<Lake>, "otherSchedules"> & {
  readonly otherSchedules: WithLevels<Lake["otherSchedules"][number]>[];
};

/** Traffic by its day types, or by what was read of its counts. */
export type ReadTraffic = Omit<TrafficDocument, "dayTypes"> &
  (
    | { readonly dayTypes: DayTypeDocument[]; readonly counts?: undefined }
    | { readonly dayTypes?: undefined; readonly counts: TrafficCounts }
  );

type ReadSeasons = NonNullable<BoatsDocument["seasons"]> & { readonly log: SeasonLog };

/** Boats whose records were read. */
export type ReadBoats = Omit<BoatsDocument, "seasons" | "traffic"> & {
  readonly seasons?: ReadSeasons | undefined;
  readonly traffic?: ReadTraffic | undefined;
};
