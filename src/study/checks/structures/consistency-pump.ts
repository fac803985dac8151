import { at } from "../../../lists.js";
import { pipeArea } from "../../../model/hydraulics/friction.js";
import { pumpHead } from "../../../model/hydraulics/pump.js";
import { cleanWaterway, waterwayLoss } from "../../../model/hydraulics/waterway.js";
import { months } from "../../../model/lake/calendar.js";
import { dailyElevations, monthlyMeans } from "../../../model/lake/levels.js";
import { meanFlows } from "../../../model/structures/deliveries/distribution.js";
import type { Withdrawal } from "../../../model/structures/inputs.js";
import { pumpedSupply } from "../../../model/structures/supply.js";
import { monthNames } from "../../format/month-names.js";
import type { StructureDocument } from "../../format/structure-schema.js";
import { dayNumber, withoutUnits } from "../../prepare/to-model.js";
import { type Contradiction, exactlyOne } from "../../reading/contradiction.js";
import { textIn } from "../in-study-units.js";
import type { SoundParts } from "../sound-parts.js";

type IntakeDocument = Extract<StructureDocument, { kind: "intake" }>;
type GravityDocument = Extract<IntakeDocument["supply"], { by: "gravity" }>;
type PumpingDocument = Extract<StructureDocument, { kind: "pumping-plant" }>;
type PumpDocument = Extract<IntakeDocument["supply"], { by: "pump" }>;
/** In which a study's heads are told. */
type System = "us" | "si";
type PumpData = Pick<PumpDocument, "curve" | "deliveryElevation" | "control">;

/** Contradictions in an intake's drive, and between it and the conduit or the lake. */
export function supplyProblems(
  intake: IntakeDocument,
  lake: SoundParts["lake"],
  system: System,
): Contradiction[] {
  const { supply } = intake;
  const problems = supply.by === "gravity" ? gravityProblems(supply, lake) : pumpProblems(supply, lake);
  // What a margin stands for meets every demand.
  if (problems.length > 0 || supply.by === "gravity" || !supply.curve) return under("supply", problems);
  return weakPump(
    withoutUnits({ ...intake, supply }),
    { lake, system },
    {
      pump: "supply",
      pipe: "conduit",
      diameter: intake.conduit.diameter.text,
      demand: (name) => intake.demand[name].text,
    },
  );
}

/** The same of a pumping plant, whose margin is typical where neither it nor a curve is given. */
export function plantPumpProblems(
  plant: PumpingDocument,
  lake: SoundParts["lake"],
  system: System,
): Contradiction[] {
  const { pump, delivered } = plant;
  const both = pump.marginHead && pump.curve ? exactlyOne(pump, "marginHead", "curve") : [];
  const problems = both.length > 0 ? both : pumpDataProblems(pump, lake);
  if (problems.length > 0 || !pump.curve) return under("pump", problems);
  const { main, pump: plain, delivered: volumes } = withoutUnits({ main: plant.main, pump, delivered });
  const drawn = {
    demand: meanFlows(volumes),
    conduit: main,
    supply: { ...plain, by: "pump", efficiency: 1 },
  } as const;
  return weakPump(
    drawn,
    { lake, system },
    {
      pump: "pump",
      pipe: "main",
      diameter: plant.main.diameter.text,
      demand: (name) => `${delivered[name].text} a month`,
    },
  );
}

const under = (field: string, problems: readonly Contradiction[]): Contradiction[] =>
  problems.map((problem) => ({ ...problem, path: [field, ...problem.path] }));

function gravityProblems(supply: GravityDocument, lake: SoundParts["lake"]): Contradiction[] {
  const { outletElevation } = supply;
  const problems = exactlyOne(supply, "availableHead", "outletElevation");
  if (outletElevation && lake && outletElevation.value >= lake.maximumElevation.value) {
    problems.push({
      path: ["outletElevation"],
      found: outletElevation.text,
      allowed: `an elevation below the lake's maximum, ${lake.maximumElevation.text}`,
    });
  }
  return problems;
}

function pumpProblems(supply: PumpDocument, lake: SoundParts["lake"]): Contradiction[] {
  const problems = exactlyOne(supply, "marginHead", "curve");
  return problems.length > 0 ? problems : pumpDataProblems(supply, lake);
}

function pumpDataProblems(supply: PumpData, lake: SoundParts["lake"]): Contradiction[] {
  const { curve, deliveryElevation } = supply;
  const problems: Contradiction[] = [];
  for (const field of ["deliveryElevation", "control"] as const) {
    const value = supply[field];
    if (curve && value === undefined) {
      problems.push({ path: [field], found: "nothing", allowed: "a value, since the pump has a curve" });
    }
    if (!curve && value !== undefined) {
      const found = typeof value === "string" ? value : value.text;
      problems.push({ path: [field], found, allowed: "no value, since the pump has no curve" });
    }
  }
  if (deliveryElevation && lake && deliveryElevation.value < lake.minimumElevation.value) {
    problems.push({
      path: ["deliveryElevation"],
      found: deliveryElevation.text,
      allowed: `an elevation of at least the lake's minimum, ${lake.minimumElevation.text}`,
    });
  }
  return [...problems, ...(curve ? curveProblems(curve) : [])];
}

function curveProblems(curve: NonNullable<PumpDocument["curve"]>): Contradiction[] {
  const problem = (path: readonly PropertyKey[], found: string, allowed: string): Contradiction => ({
    path: ["curve", ...path],
    found,
    allowed,
  });
  if (curve.length === 2) return [problem([], "2 points", "one design point, or three and more")];
  return curve.flatMap((point, index) => {
    const before = curve[index - 1];
    const { flow, head } = point;
    if (curve.length === 1) {
      return (["flow", "head"] as const)
        .filter((field) => point[field].value === 0)
        .map((field) => problem([index, field], point[field].text, `a design ${field} above zero`));
    }
    if (!before) return [];
    const problems: Contradiction[] = [];
    if (flow.value <= before.flow.value) {
      problems.push(
        problem([index, "flow"], flow.text, `above the flow of the point before, ${before.flow.text}`),
      );
    }
    if (head.value >= before.head.value) {
      problems.push(
        problem([index, "head"], head.text, `below the head of the point before, ${before.head.text}`),
      );
    }
    return problems;
  });
}

/** Kinematic viscosity of water at 20 °C, m²/s: a low loss, so that only a pump certainly too weak is refused. */
const warmWater = 1e-6;

/** Where a pump and its pipe stand below the structure, and what was typed for them. */
interface PumpTexts {
  readonly pump: "supply" | "pump";
  readonly pipe: "conduit" | "main";
  readonly diameter: string;
  readonly demand: (month: (typeof monthNames)[number]) => string;
}

/** The pump must meet every month's demand through a clean conduit; with a record, at the highest level. */
function weakPump(
  plain: Pick<Withdrawal, "demand" | "conduit" | "supply">,
  { lake, system }: { readonly lake: SoundParts["lake"]; readonly system: System },
  texts: PumpTexts,
): Contradiction[] {
  if (!lake) return [];
  const highest = [{ dayOfYear: 0, elevation: lake.maximumElevation.value }];
  const points = lake.drawdown?.map(({ on, elevation }) => ({
    dayOfYear: dayNumber(on),
    elevation: elevation.value,
  }));
  const monthlyLevels = monthlyMeans(dailyElevations(points ?? highest));
  const supply = pumpedSupply(plain, { monthlyLevels, viscosity: warmWater });
  if (!supply) return [];
  const clean = cleanWaterway(plain.conduit, {
    largestFlow: Math.max(...plain.demand),
    viscosity: warmWater,
  });
  const weak = months
    .map((month) => {
      const flow = at(plain.demand, month);
      return {
        ...{ month, flow, loss: waterwayLoss(clean, flow, warmWater) },
        head: pumpHead(supply.pump.curve, flow),
        needed: supply.systemHead(clean, flow, month),
      };
    })
    .find(({ flow, head, needed }) => flow > 0 && head < needed);
  return weak
    ? weakProblems(weak, { ...texts, diameterValue: plain.conduit.diameter, text: textIn(system) })
    : [];
}

interface WeakMonth {
  readonly month: number;
  readonly flow: number;
  readonly loss: number;
  readonly head: number;
  readonly needed: number;
}

/** Told at the curve; where the conduit alone takes more than the pump gives, at its diameter too. */
function weakProblems(
  { month, flow, loss, head, needed }: WeakMonth,
  {
    text,
    diameterValue,
    ...texts
  }: PumpTexts & { readonly text: ReturnType<typeof textIn>; readonly diameterValue: number },
): Contradiction[] {
  const name = at(monthNames, month);
  const demand = `the demand of ${name}, ${texts.demand(name)}`;
  const ofCurve = {
    path: [texts.pump, "curve"],
    found: `${text(head, "length")} at ${demand}`,
    allowed: `at least ${text(needed, "length")} there, the lift and the loss of the clean conduit`,
    remedy: "Correct the pump, the demand, the conduit, or the unit of one of them.",
  };
  if (loss <= head) return [ofCurve];
  const speed = text(flow / pipeArea(diameterValue), "speed");
  const ofBore = {
    path: [texts.pipe, "diameter"],
    found: `${texts.diameter}, in which ${demand}, runs at ${speed} and takes ${text(loss, "length")} of head with the pipe clean`,
    allowed: `a bore that takes less than the pump gives there, ${text(head, "length")}`,
    remedy: "Correct the diameter, the length, the demand, the pump, or the unit of one of them.",
  };
  return [ofCurve, ofBore];
}
