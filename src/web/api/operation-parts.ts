import type { IssueParts } from "../../app/issuing.js";
import type { AskedRuns } from "../../app/runs.js";
import type { Odds } from "../../study/odds/odds.js";
import type { StudyPages } from "../pages/study-pages.js";
/** Where operations find studies and what comes out of them. */
export interface OperationParts extends StudyPages {
  readonly runs: AskedRuns<Odds>;
  readonly issuing: Pick<IssueParts, "issues" | "now" | "key">;
}
