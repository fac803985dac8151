import { at } from "../../lists.js";
import { daysOf } from "../../model/lake/calendar.js";
import { mapped, pointRange, rangeOf } from "./amount-text.js";
import type { ShortFacts } from "./facts-schema.js";
import { type Filling, rangeOr } from "./filling.js";
import { byMonth } from "./season.js";
import type { Site } from "./site.js";
import { TypicalValue } from "./typical-value.js";

/** Docks, ramps and what the whole lake pays. @param launches of a year by month */
export function shoreParts(
  facts: ShortFacts,
  site: Site,
  launches: readonly number[],
  filling: Filling,
): object[] {
  return [
    ...dockParts(facts, filling),
    ...rampParts(facts, site, launches, filling),
    lakeWide(facts, filling),
  ];
}

function dockParts({ docks }: ShortFacts, filling: Filling): object[] {
  const { ranged, typical } = filling;
  const slips = slipsOf(docks, filling);
  if (slips === 0) return [];
  const count = Math.max(1, Math.round(slips / typical("typical.slips-per-dock").value));
  return [
    {
      id: "docks",
      kind: "dock",
      name: "Docks",
      bearer: "marina",
      count: new TypicalValue("typical.slips-per-dock", count),
      floating: new TypicalValue("typical.dock-depth", true),
      depth: ranged("typical.dock-depth", "length"),
      wettedArea: wettedArea(docks, count, filling),
      spareBuoyancy: ranged("typical.spare-buoyancy", "areaMass"),
      replacementCost: ranged("typical.slip-cost", "money", (price) => (price * slips) / count),
    },
  ];
}

type DockFacts = ShortFacts["docks"];

/** Slips as given, or those that a wetted area or a typical lake has. */
function slipsOf(docks: DockFacts, { typical }: Filling): number {
  if (docks?.slips !== undefined) return docks.slips;
  return docks?.area ? docks.area.value / typical("typical.slip-area").value : typical("typical.slips").value;
}

/** Of one dock of some that are alike. */
function wettedArea(docks: DockFacts, count: number, { ranged, text, typical }: Filling): unknown {
  if (docks?.area) {
    return text(
      mapped(rangeOf(docks.area), (area) => area / count),
      "area",
    );
  }
  const { slips } = docks ?? {};
  if (slips !== undefined) return ranged("typical.slip-area", "area", (each) => (each * slips) / count);
  const each = typical("typical.slip-area").value;
  return ranged("typical.slips", "area", (all) => (all * each) / count);
}

function rampParts(
  { ramps }: ShortFacts,
  { levels, fall }: Site,
  launches: readonly number[],
  { ranged, single, text, typical }: Filling,
): object[] {
  const count = ramps ?? typical("typical.ramps").value;
  return Array.from({ length: count }, (_, index) => ({
    id: `ramp-${index + 1}`,
    kind: "ramp",
    name: count === 1 ? "Launch ramp" : `Launch ramp ${index + 1}`,
    bearer: "lake-authority",
    width: ranged("typical.ramp-width", "length"),
    topElevation: single("typical.ramp-above", "elevation", (above) => levels.summer + above),
    bottomElevation: ranged(
      "typical.ramp-below",
      "elevation",
      (below) => levels.summer - Math.max(below, fall / 2),
    ),
    slope: ranged("typical.ramp-slope", "share"),
    launchesPerDay: byMonth(
      (month) =>
        new TypicalValue(
          "typical.launches-sharpness",
          text(pointRange(at(launches, month) / daysOf(month) / count), "count"),
        ),
    ),
    launchFee: ranged("typical.launch-fee", "money"),
  }));
}

function lakeWide(facts: ShortFacts, { ranged, typical }: Filling): object {
  const launches = rangeOr(facts.launches, typical("typical.launches")).value;
  const origin = "typical value";
  return {
    id: "whole-lake",
    kind: "lake-wide",
    name: "Duties of the whole lake",
    bearer: "lake-authority",
    items: [
      {
        name: "Monitoring and permits after infestation",
        cost: ranged("typical.monitoring-after", "moneyPerYear"),
        origin,
      },
      {
        name: "Checks of leaving boats after infestation",
        cost: ranged("typical.leaving-checks", "moneyPerYear", (each) => each * launches),
        origin,
      },
    ],
  };
}
