import { at, noElement } from "../../../lists.js";
import { type Checked, entryOf } from "../../entries/checked.js";
import { type EntryCheck, usual, within } from "../../entries/entry-check.js";
import { usualRanges } from "../../entries/usual-ranges.js";
import { monthOfDay, months } from "../../lake/calendar.js";
import type { LakeContext } from "../context.js";
import type { StructureBase } from "../inputs.js";
import { litterByYear, rampYears, type SweptRamp } from "../ramp.js";
import { type ServiceItem, type StructureKind, sized } from "../structure-kind.js";

export interface Ramp extends StructureBase, SweptRamp {
  readonly kind: "ramp";
}

function launchesLost(ramp: Ramp, context: LakeContext): ServiceItem {
  const closed = months.map(() => 0);
  const { daily } = context;
  for (let day = 0; day < daily.length; day++) {
    if ((daily[day] ?? noElement(daily, day)) >= ramp.bottomElevation) continue;
    const month = monthOfDay(day);
    closed[month] = (closed[month] ?? 0) + 1;
  }
  return {
    what: "launch fees lost while the ramp ends above the water",
    quantityKind: "days",
    quantity: closed,
    unitRate: months.map((month) => at(ramp.launchesPerDay, month) * ramp.launchFee),
  };
}

function rampEntries(checked: Checked<Ramp>): EntryCheck[] {
  const { structure: ramp, assumed } = checked;
  const slope = entryOf(checked, ["slope"], {
    what: "slope",
    measure: "share",
    found: ramp.slope,
    remedy: "Look again at the slope: rise over run.",
  });
  const width = entryOf(checked, ["width"], {
    what: "width",
    measure: "length",
    found: ramp.width,
    remedy: "Look again at the width and its unit.",
  });
  return [
    usual(slope, usualRanges.rampSlope, assumed),
    usual(width, usualRanges.rampWidth, assumed),
    ...rampLevelEntries(checked),
  ];
}

/** Boats are launched where the water's edge lies on the ramp. */
function rampLevelEntries(checked: Checked<Ramp>): EntryCheck[] {
  const { bottomElevation, topElevation } = checked.structure;
  const { highest, lowestByMonth } = checked.water;
  const bottom = entryOf(checked, ["bottomElevation"], {
    what: "water over its bottom at the highest level",
    measure: "length",
    found: highest - bottomElevation,
    remedy: "Look again at its elevations and the lake's levels, and at their units.",
  });
  const top = entryOf(checked, ["topElevation"], {
    what: "height of its top over the lowest level",
    measure: "length",
    found: topElevation - Math.min(...lowestByMonth),
    remedy: "Look again at its elevations and the lake's levels, and at their units.",
  });
  return [within(bottom, { low: 0 }), within(top, { low: 0 })];
}

export const ramp: StructureKind<Ramp> = {
  kind: "ramp",
  title: "Launch ramp",
  name: "ramp",
  commonFields: [],
  isBuilt: true,
  hasPublishedCosts: false,
  lowestField: "bottomElevation",
  reach: ({ bottomElevation, topElevation }) => ({
    floats: false,
    low: bottomElevation,
    high: topElevation,
  }),
  size: ({ width, slope }) => [sized(width, "length"), " wide, slope ", sized(slope, "ratio")],
  launches: ({ launchesPerDay, width }) => ({ perDay: launchesPerDay, width }),
  components: () => [],
  litter: litterByYear,
  ownYears: rampYears,
  cleanService: (structure, context) => [launchesLost(structure, context)],
  entries: rampEntries,
  lowered: (structure, { fall }) => ({
    ...structure,
    topElevation: structure.topElevation - fall,
    bottomElevation: structure.bottomElevation - fall,
  }),
};
