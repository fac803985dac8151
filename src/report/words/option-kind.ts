import type { OptionResult } from "../../model/option.js";

/** True for an option that keeps no mussels out and only follows a schedule of levels once they are in. */
export const onlyFollows = ({ option }: Pick<OptionResult, "option">): boolean =>
  option.steps === undefined && option.schedule !== undefined;

/** Name of the schedule that an option follows in place of the lake's own levels. */
export const scheduleNameOf = ({ option, schedule }: OptionResult): string | undefined =>
  option.schedule === undefined ? undefined : schedule.name;
