import { at } from "../../lists.js";
import { pipeArea } from "../../model/hydraulics/friction.js";
import { mapped, type Range, rangeOf } from "./amount-text.js";
import { peakAt } from "./climate.js";
import type { IntakeFacts } from "./facts-schema.js";
import type { Filling, TypicalId } from "./filling.js";
import { freeNames } from "./free-names.js";
import { boreFor, inMetres, lossOf, rackFor } from "./pipe-sizes.js";
import { byMonth, seasonShape, yearShares } from "./season.js";
import type { Site } from "./site.js";
import { TypicalValue } from "./typical-value.js";
import { lowestByMonth } from "./year-of-levels.js";

type Use = NonNullable<IntakeFacts["use"]>;

interface UseEntries {
  readonly name: string;
  readonly bearer: string;
  readonly flow: TypicalId;
  readonly least: TypicalId | undefined;
  readonly water: TypicalId;
}

const uses: Readonly<Record<Use, UseEntries>> = {
  town: {
    name: "Town water intake",
    bearer: "town",
    flow: "typical.flow-town",
    least: "typical.demand-least-town",
    water: "typical.water-town",
  },
  irrigation: {
    name: "Irrigation intake",
    bearer: "irrigators",
    flow: "typical.flow-irrigation",
    least: undefined,
    water: "typical.water-irrigation",
  },
  industry: {
    name: "Plant or mill intake",
    bearer: "industry",
    flow: "typical.flow-industry",
    least: "typical.demand-least-industry",
    water: "typical.water-industry",
  },
};

/** Who pays for the intakes of a use. */
export const bearerOfUse = (use: Use = "town"): string => uses[use].bearer;

/** The intakes of the full study. */
export function intakeParts(
  facts: readonly IntakeFacts[],
  site: Site,
  filling: Filling,
): Array<Record<string, unknown>> {
  const names = freeNames(facts.map(({ name, use = "town" }) => name ?? uses[use].name));
  return facts.map((intake, index) => {
    const entries = uses[intake.use ?? "town"];
    return {
      id: `intake-${index + 1}`,
      kind: "intake",
      name: at(names, index),
      bearer: entries.bearer,
      elevation: elevationOf(intake, site, filling),
      ...flowParts(intake, entries, site, filling),
      alternativeWater: filling.ranged(entries.water, "moneyPerVolume"),
      oxidantAllowed: new TypicalValue(entries.water, intake.use !== "irrigation"),
      fixtures: fixturesOf(filling),
    };
  });
}

/** The works of those intakes whose water is treated against tastes already, which mussels make worse. @param parts of `intakeParts` */
export function treatmentParts(
  facts: readonly IntakeFacts[],
  parts: ReadonlyArray<Readonly<Record<string, unknown>>>,
): object[] {
  return parts.flatMap(({ id, name, demand }, index) =>
    facts[index]?.tastes === "yes"
      ? {
          id: `treatment-${index + 1}`,
          kind: "treatment-plant",
          name: `Treatment, ${name}`,
          bearer: bearerOfUse(facts[index]?.use),
          treated: demand,
          intake: id,
          tasteAndOdour: { origin: "treated against tastes in some summers already" },
        }
      : [],
  );
}

/** Gates, guides and gauges of an intake or a plant. */
export const fixturesOf = ({ typical, ranged }: Filling): object[] => [
  {
    name: "Gates, guides and gauges",
    count: new TypicalValue("typical.fixtures", typical("typical.fixtures").value),
    hoursEach: ranged("typical.fixture-hours", "hours"),
  },
];

/** Below the lake in summer by the author's depth; else by a typical one, and under the lowest level all the same. */
function elevationOf({ depth }: IntakeFacts, site: Site, filling: Filling): unknown {
  const { levels, minimum, bottom } = site;
  if (depth)
    return filling.text(
      mapped(rangeOf(depth), (each) => levels.summer - each),
      "elevation",
    );
  const deepest = minimum - filling.typical("typical.submergence").value;
  return filling.ranged("typical.intake-depth", "elevation", (each) =>
    Math.max(Math.min(levels.summer - each, deepest), bottom),
  );
}

function flowParts(intake: IntakeFacts, entries: UseEntries, site: Site, filling: Filling): object {
  const { amount, typical } = filling;
  const flow = flowOf(intake, entries, filling);
  const least = entries.least ? typical(entries.least).value : 0;
  const rise = seasonShape({
    peak: peakAt(site.where, typical("typical.demand-peak").value),
    sharpness: typical("typical.demand-sharpness").value,
    least,
  });
  const shape = entries.least ? rise : resting(withoutTraces(rise), intake, site);
  const known = entries.least ?? "typical.demand-sharpness";
  const unknown = intake.pipe ? "typical.pipe-velocity" : entries.flow;
  return {
    demand: byMonth((month) =>
      amount(
        intake.flow ? known : unknown,
        mapped(flow, (each) => each * at(shape, month)),
        "flow",
      ),
    ),
    rack: rackFor(flow.high, rackEntries, filling),
    ...pipeParts(intake, flow, filling),
  };
}

/** The largest flow; where the author knows the pipe alone, what such a pipe is built for. */
function flowOf({ flow, pipe }: IntakeFacts, entries: UseEntries, { typical }: Filling): Range {
  if (flow) return rangeOf(flow);
  if (!pipe) return typical(entries.flow);
  return mapped(typical("typical.pipe-velocity"), (velocity) => velocity * pipeArea(pipe.value));
}

/** A shape in which months of next to nothing have nothing. */
function withoutTraces(shape: readonly number[]): number[] {
  const shares = yearShares(shape);
  return shape.map((each, month) => (at(shares, month) === 0 ? 0 : each));
}

/** A seasonal intake takes nothing in months in which the lake falls under it. */
function resting(shape: readonly number[], { depth }: IntakeFacts, site: Site): number[] {
  const elevation = depth ? site.levels.summer - depth.value : Number.NEGATIVE_INFINITY;
  const lowest = lowestByMonth(site);
  return shape.map((each, month) => (at(lowest, month) < elevation ? 0 : each));
}

const rackEntries = {
  velocity: "typical.rack-velocity",
  velocityLimit: "typical.rack-velocity-limit",
  headLossLimit: "typical.rack-head-limit",
  spacing: "typical.bar-spacing",
} as const;

function pipeParts(intake: IntakeFacts, flow: Range, filling: Filling): object {
  const { amount, ranged, typical } = filling;
  const bores = boresFor(flow.high, filling);
  const diameter = intake.pipe?.value ?? bores.value;
  const length = intake.length?.value ?? typical("typical.conduit-length").value;
  const minorLoss = typical("typical.minor-loss").value;
  const conduit = {
    length: intake.length?.text ?? ranged("typical.conduit-length", "length"),
    diameter: intake.pipe?.text ?? amount("typical.pipe-velocity", bores, "smallLength"),
    roughness: ranged("typical.roughness", "smallLength", inMetres),
    minorLoss: new TypicalValue("typical.minor-loss", minorLoss),
  };
  const loss = lossOf({ length, diameter, roughness: "typical.roughness", minorLoss }, flow.high, filling);
  return { conduit, supply: intake.use === "irrigation" ? gravity(loss, filling) : pumps(filling) };
}

/** By the velocity; what carries little has a bore of its own all the same. */
function boresFor(flow: number, { typical }: Filling): Range {
  const bores = mapped(typical("typical.pipe-velocity"), (velocity) => boreFor(flow, velocity));
  const least = mapped(typical("typical.least-bore"), inMetres);
  return {
    low: Math.max(bores.low, least.low),
    value: Math.max(bores.value, least.value),
    high: Math.max(bores.high, least.high),
  };
}

const gravity = (loss: number, { ranged }: Filling): object => ({
  by: "gravity",
  availableHead: ranged("typical.gravity-head", "length", (ratio) => ratio * loss),
});

const pumps = ({ ranged }: Filling): object => ({
  by: "pump",
  efficiency: ranged("typical.pump-efficiency", "share"),
  marginHead: ranged("typical.pump-margin", "length"),
  energyPrice: ranged("typical.energy-price", "moneyPerEnergy"),
});
