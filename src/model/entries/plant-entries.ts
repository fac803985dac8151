import { at } from "../../lists.js";
import { months } from "../lake/calendar.js";
import { operatingYear } from "../structures/hydropower.js";
import type { Hydropower } from "../structures/inputs.js";
import { plantRunning } from "../structures/plant/running.js";
import { type Checked, entryOf } from "./checked.js";
import { type EntryCheck, usual, usuallyAtMost } from "./entry-check.js";
import { usualRanges } from "./usual-ranges.js";

/** A power plant's head against its penstock and its turbine, and the price of its energy. */
export function plantEntries(checked: Checked<Hydropower>): EntryCheck[] {
  return [
    ...(Math.max(...plantRunning(checked.structure).flow) > 0 ? [penstockCheck(checked)] : []),
    ...turbineCheck(checked),
    ...priceChecks(checked),
  ];
}

/** Head of each month between lake and tailwater beside what the clean penstock takes of it, in all possible years. */
function heads({ structure: plant, contexts }: Checked<Hydropower>) {
  return contexts.flatMap((context) => {
    const { cleanPenstockLoss } = operatingYear(plant, context);
    return months.map((month) => ({
      gross: at(context.monthlyLevels, month) - plant.tailwaterElevation,
      lost: at(cleanPenstockLoss, month),
    }));
  });
}

function penstockCheck(checked: Checked<Hydropower>): EntryCheck {
  const shares = heads(checked).map(({ gross, lost }) => (gross > lost ? lost / gross : 1));
  const entry = entryOf(checked, ["penstock"], {
    what: "penstock: share of the head that it takes when clean, in the hardest month",
    measure: "share",
    found: Math.max(...shares),
    remedy: "Look again at its length, its diameter, the flow and the elevations, and at their units.",
  });
  return usuallyAtMost(entry, usualRanges.penstockLoss, checked.assumed);
}

function turbineCheck(checked: Checked<Hydropower>): EntryCheck[] {
  const { turbine } = checked.structure;
  if (!turbine) return [];
  const entry = entryOf(checked, ["turbine", "type"], {
    what: `${turbine.type} turbine: head between lake and tailwater, at its highest`,
    measure: "length",
    found: Math.max(...heads(checked).map(({ gross }) => gross)),
    remedy: "Look again at the tailwater's elevation and its unit, and at the type of turbine.",
  });
  return [usual(entry, turbineHeads[turbine.type], checked.assumed)];
}

const turbineHeads = {
  francis: usualRanges.francisHead,
  kaplan: usualRanges.kaplanHead,
  propeller: usualRanges.propellerHead,
  crossflow: usualRanges.crossflowHead,
  pelton: usualRanges.peltonHead,
} as const;

/** The highest price, and the lowest where it is another. */
function priceChecks(checked: Checked<Hydropower>): EntryCheck[] {
  const { energyPrice } = checked.structure;
  const [highest, lowest] = [Math.max(...energyPrice), Math.min(...energyPrice)];
  const check = (which: string, found: number) =>
    usual(
      entryOf(checked, ["energyPrice"], {
        what: `${which} price of energy`,
        measure: "moneyPerEnergy",
        found,
        remedy: "Look again at the prices and at the unit under their stroke.",
      }),
      usualRanges.energyPrice,
      checked.assumed,
    );
  return [check("highest", highest), ...(lowest === highest ? [] : [check("lowest", lowest)])];
}
