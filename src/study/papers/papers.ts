import { once } from "../../model/computed-once.js";
import type { AssumptionId } from "../../model/register/register.js";
import type { StudyDocument } from "../format/schema.js";
import type { FuturesOdds } from "../odds/odds.js";
import { type FoundParts, type TracedFound, tracedFound } from "../traced/traced-found.js";
import type { TracedOption } from "../traced/traced-option.js";
import {
  type RequestParts,
  requestAssumptions,
  type TracedRequest,
  tracedRequest,
} from "../traced/traced-request.js";
import { phaseAssumptions } from "./phase-prices.js";

/** The papers around the decision, worked out when first asked for. */
export interface Papers {
  /** What the study says to a budget office; absent where it says nothing of that. A contingency needs the odds. */
  readonly request: (odds?: FuturesOdds) => TracedRequest | undefined;
  /** What is done if mussels are found; absent where the study says nothing of it, and where they are there. */
  readonly found: () => TracedFound | undefined;
}

type PaperParts = Omit<RequestParts & FoundParts, "requested"> & { readonly requested: () => TracedOption };

export const papers = ({ requested, ...parts }: PaperParts): Papers => ({
  request: (odds) => tracedRequest({ ...parts, requested: requested() }, odds),
  found: once(() => tracedFound({ ...parts, requested: requested() })),
});

/** Assumptions behind them. */
export const paperAssumptions = (document: Pick<StudyDocument, "report">): AssumptionId[] => [
  ...requestAssumptions(document),
  ...phaseAssumptions(document),
];
