import { gravity, waterDensity } from "../../model/hydraulics/friction.js";
import { mapped, type Range, rangeOf } from "./amount-text.js";
import { peakAt } from "./climate.js";
import { leastHead } from "./fact-problems.js";
import type { ShortFacts } from "./facts-schema.js";
import type { Filling } from "./filling.js";
import { fixturesOf } from "./intake-part.js";
import { boreFor, inMetres, lossOf, rackFor } from "./pipe-sizes.js";
import { byMonth, season } from "./season.js";
import type { Site } from "./site.js";
import { TypicalValue } from "./typical-value.js";

type PlantFacts = NonNullable<ShortFacts["plant"]>;

const wattsInMegawatt = 1e6;

/** One unit at its largest flow. */
interface Unit {
  readonly megawatts: number;
  readonly head: number;
  readonly flow: number;
}

/** The powerhouse of the full study. */
export function plantPart(facts: PlantFacts, site: Site, filling: Filling): object {
  const { single, ranged, typical } = filling;
  const units = facts.units ?? typical("typical.plant-units").value;
  const heads = facts.head ? rangeOf(facts.head) : headsAt(site, filling);
  const unit = unitOf(facts, units, heads.value, filling);
  return {
    id: "powerhouse",
    kind: "hydropower",
    name: "Powerhouse",
    bearer: "power",
    units: facts.units ?? new TypicalValue("typical.plant-units", units),
    elevation: single("typical.plant-cover", "elevation", (cover) => intakeLevel(site, heads.value, cover)),
    tailwaterElevation: tailwater(facts, heads, site, filling),
    efficiency: ranged("typical.plant-efficiency", "share"),
    flow: flows(unit, site, filling),
    energyPrice: ranged("typical.energy-value", "moneyPerEnergy"),
    rack: rackFor(unit.flow, rackEntries, filling),
    penstock: penstock(unit, filling),
    coolingWater: coolingWater(unit, filling),
    fixtures: fixturesOf(filling),
  };
}

const rackEntries = {
  velocity: "typical.plant-rack-velocity",
  velocityLimit: "typical.plant-rack-limit",
  headLossLimit: "typical.plant-rack-head-limit",
  spacing: "typical.plant-bar-spacing",
} as const;

/** Typical heads; more than the lake may fall. */
const headsAt = ({ levels, minimum }: Site, { typical }: Filling): Range =>
  mapped(typical("typical.plant-head"), (head) => Math.max(head, levels.summer - minimum + leastHead));

function unitOf(facts: PlantFacts, units: number, head: number, { typical }: Filling): Unit {
  const megawatts = (facts.power ?? typical("typical.plant-power").value) / units;
  const efficiency = typical("typical.plant-efficiency").value;
  return {
    megawatts,
    head,
    flow: (megawatts * wattsInMegawatt) / (waterDensity * gravity * head * efficiency),
  };
}

/** Under the lowest level by a typical cover, and in the upper half of the head. */
const intakeLevel = ({ levels, minimum, bottom }: Site, head: number, cover: number): number =>
  Math.max(minimum - cover, levels.summer - head + leastHead / 2, bottom);

/** Below the lowest level at both of its ends. */
function tailwater(facts: PlantFacts, heads: Range, { levels, minimum }: Site, filling: Filling): unknown {
  const range = mapped(heads, (head) => Math.min(levels.summer - head, minimum - leastHead / 2));
  return facts.head
    ? filling.text(range, "elevation")
    : filling.amount("typical.plant-head", range, "elevation");
}

function flows({ flow }: Unit, { where }: Site, { amount, typical }: Filling): object {
  const peak = peakAt(where, typical("typical.plant-peak").value);
  const swing = typical("typical.plant-swing").value;
  return byMonth((month) => {
    const seasonal = 1 + swing * (2 * season(month, peak) - 1);
    const used = mapped(typical("typical.plant-factor"), (factor) => flow * Math.min(1, factor * seasonal));
    return amount("typical.plant-factor", used, "flow");
  });
}

function penstock({ head, flow }: Unit, { ranged, typical }: Filling): object {
  return {
    length: ranged("typical.penstock-length", "length", (ratio) => ratio * head),
    diameter: ranged("typical.penstock-velocity", "smallLength", (velocity) => boreFor(flow, velocity)),
    roughness: ranged("typical.steel-roughness", "smallLength", inMetres),
    minorLoss: new TypicalValue("typical.penstock-minor-loss", typical("typical.penstock-minor-loss").value),
  };
}

function coolingWater({ megawatts }: Unit, filling: Filling): object {
  const { ranged, typical } = filling;
  const flow = typical("typical.cooling-flow").value * megawatts;
  const diameter = boreFor(flow, typical("typical.cooling-velocity").value);
  const minorLoss = typical("typical.cooling-minor-loss").value;
  const length = typical("typical.cooling-length").value;
  const loss = lossOf({ length, diameter, roughness: "typical.steel-roughness", minorLoss }, flow, filling);
  return {
    length: ranged("typical.cooling-length", "length"),
    diameter: ranged("typical.cooling-velocity", "smallLength", (velocity) => boreFor(flow, velocity)),
    roughness: ranged("typical.steel-roughness", "smallLength", inMetres),
    minorLoss: new TypicalValue("typical.cooling-minor-loss", minorLoss),
    requiredFlow: ranged("typical.cooling-flow", "flow", (each) => each * megawatts),
    availableHead: ranged("typical.cooling-head", "length", (ratio) => ratio * loss),
  };
}
