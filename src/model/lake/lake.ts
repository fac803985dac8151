/** The lake as the model takes it: plain numbers in coherent units. */
import type { ByMonth } from "./calendar.js";

export type Species = "zebra" | "quagga";

export interface LevelPoint {
  /** Day of the year, 0 = 1 January. */
  readonly dayOfYear: number;
  readonly elevation: number;
}

/** Each year of a record is one possible operating year. */
export interface LevelYear {
  /** The calendar year: "1998". */
  readonly label: string;
  /** 365 elevations from 1 January; 29 February is left out. */
  readonly daily: readonly number[];
}

/** Levels that the lake may be made to follow: points joined linearly, or the years of a record. */
export interface Schedule {
  readonly id: string;
  readonly name: string;
  /** Empty if there is a record. */
  readonly drawdown: readonly LevelPoint[];
  readonly record?: readonly LevelYear[] | undefined;
}

export interface StoragePoint {
  readonly elevation: number;
  readonly area: number;
  readonly storage: number;
}

export interface Chemistry {
  readonly calcium: number;
  readonly ph?: number | undefined;
  readonly alkalinity?: number | undefined;
  readonly hardness?: number | undefined;
  readonly oxygen?: number | undefined;
  readonly conductivity?: number | undefined;
  readonly salinity?: number | undefined;
}

export interface Lake {
  readonly name: string;
  readonly species: Species;
  readonly depthType: "shallow" | "deep";
  readonly maximumElevation: number;
  readonly minimumElevation: number;
  readonly storageTable: readonly StoragePoint[];
  /** Empty if there is a record. */
  readonly drawdown: readonly LevelPoint[];
  readonly record?: readonly LevelYear[] | undefined;
  /** Schedules that an option may follow in place of the lake's own once it is infested. */
  readonly otherSchedules: readonly Schedule[];
  /** What a year without one m³ of the lake's own storage costs; 0 where nothing is said. */
  readonly storageValue: number;
  readonly surfaceTemperature: ByMonth;
  readonly deepTemperature: ByMonth;
  readonly thermoclineDepth: number;
  readonly airTemperature: ByMonth;
  /** Relative humidity of the air, share. */
  readonly humidity: ByMonth;
  readonly chemistry: Chemistry;
  readonly calciumScheme: "whittier" | "mackie-claudi";
  /** Set when the lake is infested already; the study is then a maintenance budget. */
  readonly infestedSince?: number | undefined;
}
