import { lastMade } from "../../computed-once.js";
import { timesAsMuch } from "../cleaning.js";
import type { Component, Tell } from "../component.js";

/** The same part on every unit: as many areas, visits and losses. */
export function forAllUnits(part: Component, units: number): Component {
  if (units === 1) return part;
  const { outage, oxidant } = part;
  const onAll = lastMade(
    (tell: Tell): Tell =>
      (charge, quantity) =>
        tell(charge, quantity * units),
  );
  return {
    ...part,
    wettedArea: part.wettedArea * units,
    designFlow: part.designFlow * units,
    count: part.count * units,
    cleaning: timesAsMuch(part.cleaning, units),
    oxidant: oxidant && { flow: oxidant.flow.map((flow) => flow * units) },
    outage: outage && {
      charge: outage.charge,
      quantity: (days, month) => outage.quantity(days, month) * units,
    },
    losses: (tell, layer, month, upstream) => part.losses(onAll(tell), layer, month, upstream),
  };
}
