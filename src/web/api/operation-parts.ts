import type { IssueParts } from "../../app/issuing.js";
import type { RunDesk } from "../../app/runs.js";
import type { Odds } from "../../study/odds/odds.js";
import type { StudyPages } from "../pages/study-pages.js";
/** Where operations find studies and what comes out of them. */
export interface OperationParts extends StudyPages {
  readonly desk: RunDesk<Odds>;
  readonly issuing: Pick<IssueParts, "issues" | "now" | "key">;
}
