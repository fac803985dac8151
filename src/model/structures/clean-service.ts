import { pumpPower } from "../hydraulics/power.js";
import { daysOf, hoursPerDay, monthOfDay, months, secondsPerDay } from "../lake/calendar.js";
import { wettedShares } from "../lake/levels.js";
import { at } from "../lists.js";
import type { QuantityKind } from "../money/line.js";
import type { LakeContext } from "./context.js";
import { operatingYear } from "./hydropower.js";
import type { Hydropower, Intake, Ramp, Structure } from "./inputs.js";
import { supplyOf } from "./supply.js";

/** Something that a clean structure gives or uses in a year under a level schedule, with what a unit of it costs. */
export interface ServiceItem {
  readonly what: string;
  readonly quantityKind: QuantityKind;
  /** By month; more of it costs more. */
  readonly quantity: readonly number[];
  readonly unitRate: readonly number[];
}

/**
 * What the levels cost a structure without any mussels, month by month: energy that a lower head does not make,
 * water that an intake does not get, power that a higher lift takes, launches that a ramp ending above the water
 * loses. Only differences between two schedules mean anything.
 */
export function cleanService(structure: Structure, context: LakeContext): readonly ServiceItem[] {
  switch (structure.kind) {
    case "hydropower":
      return [energyNotMade(structure, context)];
    case "intake":
      return intakeService(structure, context);
    case "ramp":
      return [launchesLost(structure, context)];
    case "dock":
    case "service-line":
    case "lake-wide":
      return [];
  }
}

/** Counted from nothing: the energy made while the intake is under water, as a negative amount. */
function energyNotMade(plant: Hydropower, context: LakeContext): ServiceItem {
  const { energy } = operatingYear(plant, context);
  const wetted = wettedShares(context.daily, plant.elevation);
  return {
    what: "energy not made at the lower head",
    quantityKind: "energy",
    quantity: energy.map((each, month) => -each * plant.units * at(wetted, month)),
    unitRate: plant.energyPrice,
  };
}

function intakeService(intake: Intake, context: LakeContext): ServiceItem[] {
  const { cleanYear } = supplyOf(intake, context);
  const wetted = wettedShares(context.daily, intake.elevation);
  const delivered = months.map((month) => at(cleanYear, month).delivered * at(wetted, month));
  const water: ServiceItem = {
    what: "water from elsewhere while the intake falls short or stands dry",
    quantityKind: "volume",
    quantity: months.map(
      (month) => (at(intake.demand, month) - at(delivered, month)) * daysOf(month) * secondsPerDay,
    ),
    unitRate: months.map(() => intake.alternativeWater),
  };
  const { supply } = intake;
  if (supply.by === "gravity") return [water];
  const pumping: ServiceItem = {
    what: "pumping energy at the other lift",
    quantityKind: "energy",
    quantity: months.map(
      (month) =>
        pumpPower(at(delivered, month), at(cleanYear, month).head, supply.efficiency) *
        daysOf(month) *
        hoursPerDay,
    ),
    unitRate: months.map(() => supply.energyPrice),
  };
  return [water, pumping];
}

function launchesLost(ramp: Ramp, context: LakeContext): ServiceItem {
  const closed = months.map(() => 0);
  context.daily.forEach((level, day) => {
    const month = monthOfDay(day);
    if (level < ramp.bottomElevation) closed[month] = at(closed, month) + 1;
  });
  return {
    what: "launch fees lost while the ramp ends above the water",
    quantityKind: "days",
    quantity: closed,
    unitRate: months.map((month) => at(ramp.launchesPerDay, month) * ramp.launchFee),
  };
}
