import type { Opening } from "../../model/program/traffic.js";
import type { SpreadQuantity } from "../../units/spread.js";
import type { ProgramDocument } from "./program-schema.js";
import type { ReadTraffic } from "./read-records.js";
import type { OpenDocument } from "./traffic-schema.js";

/** A yearly line: a lump sum, or a count with a unit price. */
export type SoundYearly = ProgramDocument["yearly"][number] &
  (
    | { readonly cost: SpreadQuantity; readonly count: undefined }
    | { readonly cost: undefined; readonly count: number; readonly unitCost: SpreadQuantity }
  );

/** Open hours of an option's stations, with the traffic that they serve. */
export interface ReadHours {
  readonly openings: readonly Opening[];
  readonly traffic: ReadTraffic;
}

/** Steps with their coverage, entered or from open hours; or no steps. */
export type SoundSteps<Steps> =
  | { readonly steps: undefined; readonly open: undefined; readonly hours: undefined }
  | {
      readonly steps: Steps & { readonly coverage: SpreadQuantity };
      readonly open: undefined;
      readonly hours: undefined;
    }
  | { readonly steps: Steps; readonly open: OpenDocument; readonly hours: ReadHours };

interface WrittenOption {
  readonly steps?: object | undefined;
  readonly open?: OpenDocument | undefined;
  readonly yearly: ProgramDocument["yearly"];
}

/** An option whose coverage and yearly amounts are known to be complete. */
export type SoundOption<Option extends WrittenOption> = Omit<Option, "steps" | "open" | "yearly"> & {
  readonly yearly: SoundYearly[];
} & SoundSteps<NonNullable<Option["steps"]>>;
