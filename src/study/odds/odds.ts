import type { Estimate, QuantileEstimate } from "../../model/futures/clusters.js";
import type { Account } from "../../model/money/account.js";
import type { FoundTimes } from "../../model/risk/course.js";
import type { SearchResult } from "../search/result.js";
import type { DrawSettings } from "./odds-settings.js";

/** Shares of futures at which costs are told. */
export const quantileShares = [0.1, 0.5, 0.8, 0.9, 0.95] as const;

/** A cost that a share of the futures does not exceed. */
export interface CostQuantile extends QuantileEstimate {
  /** One of `quantileShares`. */
  readonly share: number;
}

/** A share of futures, with the limits of its interval. */
interface ShareOfFutures {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/** Cost of one year of the horizon over the futures, undiscounted. */
export interface FanYear {
  readonly year: number;
  readonly mean: number;
  readonly p10: number;
  readonly p50: number;
  readonly p90: number;
}

/** An option against the option that does nothing, in the same futures. */
export interface OddsAgainst {
  /** Futures in which it comes out cheaper than doing nothing. */
  readonly cheaper: ShareOfFutures;
  /** Sets of assumptions with which it is worth its cost on average over luck. */
  readonly worthIt: ShareOfFutures;
  readonly netBenefit: Estimate;
  /** Means of the program cost added and of the infestation cost avoided; their ratio where something is added. */
  readonly addedCost: Estimate;
  readonly avoidedLoss: Estimate;
  readonly benefitCostRatio: number | undefined;
  readonly netBenefits: readonly CostQuantile[];
}

/** Means of what an option avoids; damage, duties and policies make up its avoided loss, the other losses stand beside. */
export type AvoidedByAccount = Readonly<Record<Account, number>>;

/** A present cost over the futures: its mean, and the limits of 80 % of what comes out. */
export interface FoundAmount {
  readonly mean: Estimate;
  readonly low: number;
  readonly high: number;
}

/** What is done once mussels are found. */
export interface FoundOdds {
  /** In the study's order. */
  readonly phases: readonly FoundAmount[];
  /** Phases that the comparison has, those told beside it, and both. */
  readonly counted: FoundAmount;
  readonly beside: FoundAmount;
  readonly all: FoundAmount;
  /** Times on average. */
  readonly times: FoundTimes;
  /** Futures in which mussels are found at all. */
  readonly isFound: ShareOfFutures;
}

/** What the futures say of one option. Money is present value in prices of the price year. */
export interface OptionOdds {
  readonly id: string;
  readonly name: string;
  /** Program and infestation together, on average over all futures. */
  readonly meanCost: Estimate;
  /** The same, as it comes out: by `quantileShares`. */
  readonly cost: readonly CostQuantile[];
  /** Infested at any time within the horizon, and when it ends: fewer where something is tried against mussels. */
  readonly everInfested: ShareOfFutures;
  readonly infestedAtEnd: ShareOfFutures;
  /** Chance that mussels have established by the end of each year of the horizon. */
  readonly establishedBy: readonly number[];
  /** Of the mean cost, the program's. */
  readonly programCost: Estimate;
  /** Against the option that does nothing; absent for that one. */
  readonly against:
    | (OddsAgainst & {
        readonly avoided: AvoidedByAccount;
        /** The benefit–cost ratio without the duties, and without the policies, that staff entered. */
        readonly ratioWithout: Readonly<Record<"duty" | "policy", number | undefined>>;
        /** With the other losses that staff entered; absent where they entered none. */
        readonly withOther: OddsAgainst | undefined;
      })
    | undefined;
  readonly fan: readonly FanYear[];
  /** Chance that the cost is above an amount, from the least to the greatest. */
  readonly exceedance: ReadonlyArray<{ readonly cost: number; readonly chance: number }>;
  /** Equal yearly amount that covers program and infestation in a share of the futures, the study's `confidence`. */
  readonly budget: QuantileEstimate & { readonly confidence: number };
  /**
   * Equal yearly amount of the program alone while the lake stays clean: at central values, and enough in a share of the
   * draws of the lake. Absent where the study asks for no contingency.
   */
  readonly cleanProgram?: {
    readonly central: number;
    readonly value: number;
    readonly confidence: number;
  };
  /** What is done once mussels are found; absent where the study says nothing of it, and where they are there. */
  readonly found?: FoundOdds | undefined;
  /** What choosing it costs on average against the best choice for each set of assumptions. */
  readonly regret: number;
}

/** What knowing an input exactly before choosing is worth on average. */
export interface Information {
  readonly id: string;
  readonly name: string;
  readonly value: number;
  readonly standardError: number;
}

/** Net benefit of the requested option with one input at its low and at its high value, all else as assumed. */
export interface TornadoBar {
  readonly id: string;
  readonly name: string;
  /** Ids of the inputs that are moved, where they are several that are drawn together. */
  readonly members?: readonly string[] | undefined;
  /**
   * P10 and P90 of the input, in the unit of its assumption or the coherent unit of its dimension; of several inputs
   * the shares 0.1 and 0.9 at which each is; of the operating year the places in the record, counted from 0, of the
   * years with the least and the greatest net benefit.
   */
  readonly low: { readonly input: number; readonly netBenefit: number };
  readonly high: { readonly input: number; readonly netBenefit: number };
}

export interface Sensitivity {
  readonly netBenefit: number;
  /** Widest first. */
  readonly tornado: readonly TornadoBar[];
  /** Spearman's, of each input with the net benefit; strongest first. */
  readonly ranks: ReadonlyArray<{ readonly id: string; readonly name: string; readonly correlation: number }>;
  /** Of what the inputs explain, the part of typical values; absent where a study has none. */
  readonly typicalShare?: number;
}

/** A part that is kept by another plan than at the study's own values in some draws of the lake, under its own levels. */
export interface PlanTurn {
  readonly structure: string;
  readonly structureName: string;
  readonly part: string;
  readonly plan: { readonly id: string; readonly name: string };
  /** Share of the draws with another plan. */
  readonly share: number;
  /** The most frequent of the others, with its own share. */
  readonly other: { readonly id: string; readonly name: string; readonly share: number };
  /** The input that tells these draws from the rest best; absent where none does beyond doubt, or there are few. */
  readonly by: TurningInput | undefined;
}

export interface TurningInput {
  readonly id: string;
  readonly name: string;
  /** Chance that a draw with another plan has the higher value of the two, less that of the lower: −1 to 1. */
  readonly apart: number;
}

/** How sure a study is. */
export interface Odds {
  readonly settings: DrawSettings;
  readonly futures: number;
  /** Draws of the lake, each with as many futures. */
  readonly lakes: number;
  /** Samples of as many of them, independent of one another: errors are those of their means. */
  readonly blocks: number;
  /** Why drawing ended: the mean net benefit was known well enough, or the most draws were made. */
  readonly end: "precise" | "cap";
  readonly inputs: number;
  readonly requested: string;
  readonly baseline: string;
  readonly options: readonly OptionOdds[];
  /** Expected value of knowing everything but luck before choosing: no study or measurement is worth more. */
  readonly perfectInformation: number;
  readonly perfectInformationError: number;
  /** Most valuable first. */
  readonly information: readonly Information[];
  /** The most often turned first. */
  readonly planTurns: readonly PlanTurn[];
  readonly matters: Sensitivity;
  /** Programs and levels that were searched in some of these draws; absent where the study has no search. */
  readonly search?: SearchResult | undefined;
}

/** Id under which the operating year is drawn, where the lake has a record of levels. */
export const hydrologicYearId = "lake/record/year";

/** What the draws say of single inputs. */
export type InputsTold = Pick<Odds, "information" | "planTurns">;

/** The same without what matters, which takes most of the time, and without what is told of single inputs. */
export type FuturesOdds = Omit<Odds, "matters" | keyof InputsTold>;
