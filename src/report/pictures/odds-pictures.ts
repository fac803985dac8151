import type { StudyDocument } from "../../study/format/schema.js";
import type { Odds } from "../../study/odds/odds.js";
import { type Formatter, formatter } from "../words/format.js";
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

/** From the odds and the study alone, for pages that have no comparison at hand. */
export function oddsPictures(odds: Odds, { lake, money, study }: StudyDocument): OddsPictures {
  const format: Formatter = formatter(money.currency, study.units);
  return {
    chances: lake.infestedSince === undefined ? chancePanels(odds, money) : undefined,
    outcomes: outcomeDots(odds, format),
    tornado: tornadoRows(odds, format),
  };
}
