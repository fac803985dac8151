import type { ByMonth } from "./lake/calendar.js";
import type { Lake } from "./lake/lake.js";
import type { Bearer } from "./money/bearer.js";
import type { Escalation } from "./money/price-rises.js";
import type { CostGroup } from "./program/groups.js";
import type { SamplesPerYear } from "./risk/detection.js";
import type { PlanEntry } from "./structures/catalogue.js";
import type { Structure } from "./structures/kinds.js";

export interface VesselClass {
  readonly id: string;
  readonly name: string;
  readonly share: number;
  /** Share of its launches with mussels on the boat, dead or alive: "fouled", as inspectors count. */
  readonly fouled: number;
  /** Of fouled boats, those with living mussels; typical of its reach if absent. */
  readonly living?: number | undefined;
  /** Days since its boats were in infested water; absent where nobody knows. */
  readonly daysSince?: number | undefined;
}

/** A ramp, and its share of all launches. */
export interface LaunchSite {
  readonly id: string;
  readonly name: string;
  readonly share: number;
}

/** Days that are alike in the boats that come. */
export interface TrafficDayType {
  readonly id: string;
  readonly name: string;
  readonly daysPerYear: number;
  /** The same by month; absent where only the number of the year is known. */
  readonly daysByMonth?: ByMonth | undefined;
  /** Launches of such a day at each site, in the order of the sites, in each of 24 hours from midnight. */
  readonly launchesBySite: ReadonlyArray<readonly number[]>;
}

/** When boats come, and to which site. */
export interface Traffic {
  readonly sites: readonly LaunchSite[];
  readonly dayTypes: readonly TrafficDayType[];
}

export interface Boats {
  readonly launches: ByMonth;
  /** As counted or judged; its total may miss that of the launches. */
  readonly traffic?: Traffic | undefined;
  readonly classes: readonly VesselClass[];
  /** Ways in beside the boats that launch; absent where the study names none, and then a typical share of all foundings. */
  readonly otherWays?: readonly OtherWay[] | undefined;
  readonly comparable: ComparableLakes;
  /** What years without mussels have taught; absent where the study enters none. */
  readonly learned?: LearnedRate | undefined;
}

export type LakeKind = "open" | "busy" | "inspected" | "unknown";

/** The second way to the yearly chance: the rate of lakes like this one. */
export interface ComparableLakes {
  /** Lakes of one kind, whose rate is an assumption; or a yearly rate −ln(1−h) of the study's own. */
  readonly rate: { readonly kind: LakeKind } | { readonly own: number };
  /** Share of fouled arrivals that the checks contained in an own rate let through; 1 for a rate without checks. */
  readonly checksLetThrough: number;
  /** Weight of the boats' own way against these lakes, 0 to 1. */
  readonly weightOfBoats: number;
}

/** ln λ after clean years, m′ + (ln λ − m) s′/s of a rate λ that was drawn before them. */
export interface LearnedRate {
  readonly medianBefore: number;
  readonly medianAfter: number;
  /** s′/s: how much narrower the rate has become. */
  readonly narrowing: number;
  /** Chance of these years without a find, before they were known, and of mussels that are there and not seen. */
  readonly chanceOfClean: number;
  readonly infestedUnseen: number;
}

/** A way in beside the boats that launch. */
export interface OtherWay {
  readonly name: string;
  /** Yearly chance while its source is infested. */
  readonly chance: number;
  /** Whether the stations check it too. */
  readonly checked: boolean;
  /** Year of the horizon, from 0, from which its source is infested; from the start where absent. */
  readonly fromYear?: number | undefined;
  /** Yearly chance that its source becomes infested; it is from the start where absent. */
  readonly sourceChance?: number | undefined;
}

/** What a class of boats passes on its way to the water. Shares are 0 to 1. */
export interface CheckSteps {
  /** Owners of risky boats who say so. */
  readonly declaration: number;
  /** Risky boats not declared that the quick check finds. */
  readonly quickCheck: number;
  /** Mussels removed or boats made safe by the full inspection. */
  readonly inspection: number;
  readonly hotWash: number;
}

export interface ProgramSteps extends CheckSteps {
  /** Launches in open hours over all launches. */
  readonly coverage: number;
  /** Boats without mussels that are set aside all the same. */
  readonly falseAlarm: number;
  /** Of those, washed all the same; set-aside boats with mussels all are. */
  readonly washedAnyway: number;
  /** Set-aside boats that must dry before they launch, and for how long. */
  readonly hold: { readonly share: number; readonly days: number };
  /** Set-aside boats with mussels that are turned away. */
  readonly refusal: number;
  /** Fewer fouled arrivals because people know that they are checked. */
  readonly deterrence: number;
  /** Classes whose boats carry a seal and pass at a glance. */
  readonly seals: ReadonlyArray<{ readonly vesselClass: string; readonly share: number }>;
  /** Classes for which some steps work otherwise. */
  readonly byClass: ReadonlyArray<
    { readonly vesselClass: string } & { readonly [Step in keyof CheckSteps]?: number | undefined }
  >;
}

interface StaffLine {
  readonly name: string;
  /** "wages" where nothing is said. */
  readonly group?: CostGroup | undefined;
  readonly hoursPerYear: number;
  readonly wage: number;
  readonly loading: number;
  /** Paid hours beside those of the year, at so many times the wage. */
  readonly overtime?: { readonly hours: number; readonly pay: number } | undefined;
  readonly post?: "seasonal" | "permanent" | undefined;
  /** Of the hours of the year: paid and not worked, and worked in training. */
  readonly leaveHours?: number | undefined;
  readonly trainingHours?: number | undefined;
}

export interface EquipmentLine {
  readonly name: string;
  /** "equipment" where nothing is said. */
  readonly group?: CostGroup | undefined;
  readonly count: number;
  readonly price: number;
  readonly life: number;
  /** What one piece costs to run, a year. */
  readonly yearlyCost?: number | undefined;
  /** A cost of starting, never paid again; its life is at least the horizon. */
  readonly oneTime?: boolean | undefined;
}

/** A lump for the year, or a count at a unit price; of group "other" where nothing is said. */
export type YearlyLine = { readonly name: string; readonly group?: CostGroup | undefined } & (
  | { readonly cost: number }
  | { readonly count: number; readonly unitCost: number; readonly unit?: string | undefined }
);

export interface FeeLine {
  readonly name: string;
  /** The class that pays it. */
  readonly vesselClass?: string | undefined;
  /** Payments a year if the fee kept nobody away. */
  readonly countPerYear: number;
  /** Boats that make these payments; each makes one where nothing is said. */
  readonly payers?: number | undefined;
  readonly fee: number;
}

/** How mussels are watched for: by samples, or so that they are noticed with known chances. */
export interface Monitoring extends SamplesPerYear {
  /** Chances to have noticed by the end of the first, second, … year of an infestation, in place of samples. */
  readonly noticedWithin?: readonly number[] | undefined;
}

/** What is tried once, in the year in which mussels are noticed, to be rid of them. */
export interface Response {
  readonly name: string;
  /** Cost of one attempt. */
  readonly cost: number;
  readonly chance: number;
  /** Last year of an infestation in which it is still tried. */
  readonly latestYear: number;
  /** The program's bearer if absent. */
  readonly bearer?: Bearer | undefined;
}

export interface ProgramOption {
  readonly id: string;
  readonly name: string;
  readonly steps?: ProgramSteps | undefined;
  /** How far the program has grown in its first years, in full after them: shares of its reach and of its cost. */
  readonly rampUp: ReadonlyArray<{ readonly reach: number; readonly cost: number }>;
  /** Id of the schedule that the lake follows once it is infested; without steps and schedule: the baseline. */
  readonly schedule?: string | undefined;
  readonly staff: readonly StaffLine[];
  readonly equipment: readonly EquipmentLine[];
  readonly yearly: readonly YearlyLine[];
  /** Grants and contributions a year. */
  readonly otherRevenue?: ReadonlyArray<{ readonly name: string; readonly amount: number }> | undefined;
  readonly fees: readonly FeeLine[];
  /** Share of those who would pay that `fee`, the highest for which it is stated, keeps away; lower fees as much less. */
  readonly demandLoss?: { readonly fee: number; readonly loss: number } | undefined;
  readonly afterInfestation: { readonly share: number };
  /** Mussels are noticed at once where it is absent. */
  readonly monitoring?: Monitoring | undefined;
  readonly response?: Response | undefined;
}

export interface MoneySettings {
  readonly currency: string;
  readonly priceYear: number;
  readonly startYear: number;
  readonly horizon: number;
  readonly discountRate: number;
  /** Two more real rates at which options are weighed; those of the assumptions if absent. */
  readonly otherDiscountRates?: readonly number[] | undefined;
  readonly timing: "mid-year" | "end-of-year";
  /** Month in which the budget's year starts, 1 to 12. */
  readonly fiscalYearStart: number;
  /** General inflation a year, for amounts in money of their years. */
  readonly inflation: number;
  /** Groups of costs whose prices rise otherwise than prices in general, each once. */
  readonly escalation?: readonly Escalation[] | undefined;
  readonly programBearer: string;
  readonly bearers: ReadonlyArray<{ id: string; name: string }>;
}

/**
 * What the model needs to know of a study. Plain numbers in coherent units: m, m², m³, m³/s, °C, kWh, money in
 * the currency of the study; shares 0 to 1. Lists of twelve run from January to December.
 */
export interface StudyInput {
  /** The catalogue of protection plans. */
  readonly plans: readonly PlanEntry[];
  readonly lake: Lake;
  readonly structures: readonly Structure[];
  readonly boats: Boats;
  readonly options: readonly ProgramOption[];
  readonly money: MoneySettings;
}
