import type { AssumptionSet } from "../assumptions/entry.js";
import type { LakeTerms } from "../model/search/lake-terms.js";
import type { StudyDocument } from "../study/format/schema.js";
import type { LevelCosts } from "../study/levels/level-costs.js";
import type { LakeFutures, LakePoint, StudyPlan } from "../study/odds/draws.js";
import type { OfInputs } from "../study/odds/inputs-told.js";
import type { DrawnFutures } from "../study/odds/joined-futures.js";
import type { FuturesOdds, InputsTold, Odds, Sensitivity } from "../study/odds/odds.js";
import type { OddsSettings } from "../study/odds/odds-settings.js";
import type { SearchResult } from "../study/search/result.js";

/** A study whose futures are drawn. */
export interface StudyToDraw {
  readonly document: StudyDocument;
  readonly settings: OddsSettings;
}

/** What a worker may be asked, by kind. */
export interface Questions {
  /** One draw of the lake in a block, with its futures. */
  readonly lake: { readonly block: number; readonly lake: number };
  /** What all draws say together. */
  readonly summary: { readonly futures: DrawnFutures; readonly end: Odds["end"] };
  /** What they say of single inputs. */
  readonly inputs: { readonly futures: OfInputs };
  /** What is drawn. */
  readonly plan: object;
  /** How each input goes with the net benefits of the futures. */
  readonly ranks: { readonly netBenefits: Float64Array };
  /** Of the requested option at values of one's choice, for each set of chances. */
  readonly netBenefits: { readonly point: LakePoint };
  /** A part of the schedules of levels that a search tries. */
  readonly levels: { readonly part: number; readonly parts: number };
  /** One draw of the lake in a block, for all programs of a search and for a schedule of levels. */
  readonly terms: {
    readonly block: number;
    readonly lake: number;
    readonly schedule: string | undefined;
  };
  /** What the search says of the study, from all of these. */
  readonly search: { readonly levels: readonly LevelCosts[]; readonly terms: readonly LakeTerms[] };
}

/** What it answers. */
export interface Answers {
  readonly lake: LakeFutures;
  readonly summary: FuturesOdds;
  readonly inputs: InputsTold;
  readonly plan: StudyPlan;
  readonly ranks: Sensitivity["ranks"];
  readonly netBenefits: readonly number[];
  readonly levels: readonly LevelCosts[];
  readonly terms: LakeTerms;
  readonly search: SearchResult;
}

export type Question = {
  readonly [Kind in keyof Questions]: { readonly kind: Kind } & Questions[Kind];
}[keyof Questions];

/** What a worker needs to know of a study. */
export interface GivenStudy {
  readonly study: StudyToDraw;
  readonly assumptions: AssumptionSet;
}

/** A study in memory that all threads share: it is put there once, and each worker reads it once. */
export interface SharedStudy {
  /** Of its own for each study. */
  readonly id: string;
  /** A GivenStudy as the engine writes it. */
  readonly bytes: Uint8Array;
}

/** To a worker: a question about a study. */
export interface Request {
  readonly study: SharedStudy;
  readonly question: Question;
}
