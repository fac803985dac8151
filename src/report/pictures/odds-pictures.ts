import type { Odds } from "../../study/odds/odds.js";
import type { ReportContext } from "../document/context.js";
import { type ChancePanels, chancePanels } from "./chance-panels.js";
import { type OutcomeDots, outcomeDots } from "./outcome-dots.js";
import type { RowPicture } from "./row-picture.js";
import { tornadoRows } from "./tornado-rows.js";

/** How sure a study is, in pictures. */
export interface OddsPictures {
  /** Absent where the lake is infested already. */
  readonly chances: ChancePanels | undefined;
  readonly outcomes: OutcomeDots;
  /** Absent where no input moves the net benefit. */
  readonly tornado: RowPicture | undefined;
}

export const oddsPictures = (odds: Odds, context: ReportContext): OddsPictures => ({
  chances: context.infestedSince === undefined ? chancePanels(odds, context) : undefined,
  outcomes: outcomeDots(odds, context),
  tornado: tornadoRows(odds, context),
});
