import { at } from "../../lists.js";
import { pumpHead } from "../hydraulics/pump.js";
import { cleanWaterway } from "../hydraulics/waterway.js";
import { months } from "../lake/calendar.js";
import type { LakeContext } from "../structures/context.js";
import type { Intake } from "../structures/inputs.js";
import { pumpedSupply, supplyOf } from "../structures/supply.js";
import { type Checked, entryOf } from "./checked.js";
import { type EntryCheck, usual, usuallyAtMost, within } from "./entry-check.js";
import { cleanLoss } from "./pipe-entries.js";
import { usualRanges } from "./usual-ranges.js";

/** What drives an intake's water when clean, and what water and energy cost there. */
export function supplyEntries(checked: Checked<Intake>): EntryCheck[] {
  const { structure: intake, assumed } = checked;
  if (Math.max(...intake.demand) === 0) return [];
  const water = entryOf(checked, ["alternativeWater"], {
    what: "price of water from elsewhere",
    measure: "moneyPerVolume",
    found: intake.alternativeWater,
    remedy: "Look again at the price and at the unit under its stroke.",
  });
  return [
    deliveredCheck(checked),
    ...(intake.supply.by === "pump" ? pumpChecks(checked, intake.supply.energyPrice) : []),
    ...(intake.alternativeWater > 0 ? [usual(water, usualRanges.waterPrice, assumed)] : []),
  ];
}

/** Least share of a month's demand that reaches its end through the clean conduit, over all possible years. */
function deliveredCheck(checked: Checked<Intake>): EntryCheck {
  const { structure: intake, contexts } = checked;
  const shares = contexts.flatMap((context) =>
    supplyOf(intake, context).cleanYear.flatMap(({ delivered }, month) =>
      at(intake.demand, month) > 0 ? [delivered / at(intake.demand, month)] : [],
    ),
  );
  const entry = entryOf(checked, ["supply"], {
    what: "conduit: share of the demand that it delivers when clean, in the hardest month",
    measure: "share",
    found: Math.min(...shares),
    remedy: "Look again at the conduit, the demand and the head that drives it, and at their units.",
  });
  return within(entry, { low: 1 });
}

function pumpChecks(checked: Checked<Intake>, price: number): EntryCheck[] {
  const { structure: intake, contexts, assumed } = checked;
  const loss = entryOf(checked, ["conduit"], {
    what: "conduit: head that it loses when clean, at the largest demand",
    measure: "length",
    found: cleanLoss({ pipe: intake.conduit, flow: Math.max(...intake.demand) }, contexts[0].viscosity),
    remedy: "Look again at its length, its diameter and the demand, and at their units.",
  });
  const spare = entryOf(
    checked,
    ["supply", intake.supply.by === "pump" && intake.supply.curve ? "curve" : "marginHead"],
    {
      what: "pump: head to spare with the conduit clean, in the hardest month",
      measure: "length",
      found: Math.min(...contexts.map((context) => spareHead(intake, context))),
      remedy:
        "Look again at the head of the pump, and where it has a curve at the flow and the water level it delivers to.",
    },
  );
  const energy = entryOf(checked, ["supply", "energyPrice"], {
    what: "price of energy",
    measure: "moneyPerEnergy",
    found: price,
    remedy: "Look again at the price and at the unit under its stroke.",
  });
  return [
    usuallyAtMost(loss, usualRanges.conduitLoss, assumed),
    usuallyAtMost(spare, usualRanges.spareHead, assumed),
    usual(energy, usualRanges.energyPrice, assumed),
  ];
}

/** The margin that is entered, or what the curve has over the lift and the clean loss in the hardest month, m. */
function spareHead(intake: Intake, context: LakeContext): number {
  const supply = pumpedSupply(intake, context);
  if (!supply) return intake.supply.by === "pump" ? (intake.supply.marginHead ?? 0) : 0;
  const clean = cleanWaterway(intake.conduit, {
    largestFlow: Math.max(...intake.demand),
    viscosity: context.viscosity,
  });
  const spare = months.flatMap((month) => {
    const demand = at(intake.demand, month);
    return demand > 0 ? [pumpHead(supply.pump.curve, demand) - supply.systemHead(clean, demand, month)] : [];
  });
  return Math.min(...spare);
}
