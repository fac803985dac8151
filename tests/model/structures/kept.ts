import type { PinnedPlan } from "../../../src/model/structures/catalogue.js";
import type { ComponentResult, Priced } from "../../../src/model/structures/component.js";
import { tellAll } from "../../../src/model/structures/plans/ledger.js";
import { growingYears, type PartYears } from "../../../src/model/structures/plans/untouched.js";
import { linesByYear, MergedLists } from "../../../src/model/structures/plans/year-table.js";
import { keepInService } from "../../../src/model/structures/upkeep.js";

/** A part by itself, kept in service. @param make makes it anew at each call, as the parts of a structure are */
export const keptPart = (make: () => PartYears, pinned: readonly PinnedPlan[] = []): ComponentResult =>
  keepInService(growingYears(make()), pinned, make);

/** Lines by name, as one year of a plan tells them. */
export function mergedLines(lines: readonly Priced[]): readonly Priced[] {
  const merged = new MergedLists();
  tellAll(merged.tell, lines);
  merged.endList();
  return linesByYear(merged.table([0])).flat();
}
