import { at } from "../../../lists.js";
import { supplyEntries } from "../../entries/supply-entries.js";
import { pumpPower } from "../../hydraulics/power.js";
import { daysOf, hoursPerDay, months, secondsPerDay } from "../../lake/calendar.js";
import { wettedShares } from "../../lake/levels.js";
import type { AssumptionId } from "../../register/register.js";
import { cleaningOf, supplyOutage } from "../cleaning.js";
import type { Charge, Component, Tell } from "../component.js";
import type { LakeContext } from "../context.js";
import type { Intake, Rack, Withdrawal } from "../inputs.js";
import { fouledPipeIds, pipeWall, thicknessLimit, upstreamWall } from "../pipe.js";
import type { Drive, PipePart } from "../pipe-part.js";
import { pumpSummary } from "../pump-summary.js";
import { type HeadLost, rackComponent, rackWall } from "../rack.js";
import { atOneElevation, boreWords, type ServiceItem, type StructureKind, sized } from "../structure-kind.js";
import { fouledConveyance, supplyOf } from "../supply.js";

/** A withdrawal: its rack if it has one, and its conduit with or without a pump. */
export function intakeComponents(
  intake: Withdrawal & { readonly rack?: Rack | undefined },
  context: LakeContext,
): Component[] {
  const { rack, elevation, demand } = intake;
  const headLost = (ids: readonly AssumptionId[]): HeadLost => {
    const tellPumped = pumping(intake, ids);
    return (tell, extraHead, month) => tellPumped(tell, extraHead, at(demand, month), month);
  };
  const outage = intakeOutage(intake, context);
  const racks = rack ? [rackComponent({ rack, elevation, flow: demand, headLost, ...outage }, context)] : [];
  return [...racks, conduitComponent(intake, outage, context)];
}

/** Water that is bought elsewhere while the intake stands; none while it hangs dry anyway. */
function intakeOutage(intake: Withdrawal, context: LakeContext) {
  const wetted = wettedShares(context.daily, intake.elevation);
  const water = {
    what: "water from elsewhere in outages",
    type: "loss",
    quantityKind: "volume",
    unitRate: intake.alternativeWater,
  } as const;
  return supplyOutage(
    context,
    water,
    (days, month) =>
      Math.min(days, daysOf(month)) * at(intake.demand, month) * secondsPerDay * at(wetted, month),
  );
}

function conduitComponent(
  intake: Withdrawal,
  { outage, outageDaysId }: ReturnType<typeof intakeOutage>,
  context: LakeContext,
): Component {
  const wall = pipeWall(intake.conduit, intake.elevation, { flow: intake.demand });
  return {
    name: "conduit",
    kind: "conduit",
    surface: wall.surface,
    wettedArea: wall.wettedArea,
    designFlow: Math.max(...intake.demand),
    count: 1,
    cleaning: cleaningOf("conduit", wall.wettedArea, context),
    oxidant: intake.oxidantAllowed ? { flow: intake.demand } : undefined,
    outage,
    outageDaysId,
    losses: conduitLosses(intake, context),
    limit: thicknessLimit(context),
  };
}

/** Head that the layer adds at the flow delivered, and water that it keeps from being delivered. */
function conduitLosses(intake: Withdrawal, context: LakeContext): Component["losses"] {
  const supply = supplyOf(intake, context);
  const tellPumped = pumping(intake, fouledPipeIds);
  const shortfall: Charge = {
    what: "water from elsewhere while the conduit falls short",
    type: "loss",
    quantityKind: "volume",
    unitRate: intake.alternativeWater,
    assumptionIds: fouledPipeIds,
  };
  return (tell, layer, month) => {
    if (at(intake.demand, month) === 0) return;
    const clean = at(supply.cleanYear, month);
    const fouled = fouledConveyance(supply, layer, month, context);
    tellPumped(tell, Math.max(0, fouled.head - clean.head), fouled.delivered, month);
    tell(shortfall, Math.max(0, clean.delivered - fouled.delivered) * daysOf(month) * secondsPerDay);
  };
}

/** Tells the energy that an extra head costs a pump; nothing where water runs by gravity. */
function pumping({ supply }: Withdrawal, assumptionIds: readonly AssumptionId[]) {
  if (supply.by === "gravity") return () => {};
  const { efficiency, energyPrice: unitRate } = supply;
  const charge: Charge = {
    what: "extra pumping energy",
    type: "loss",
    quantityKind: "energy",
    unitRate,
    assumptionIds,
  };
  return (tell: Tell, extraHead: number, flow: number, month: number): void =>
    tell(charge, pumpPower(flow, extraHead, efficiency) * daysOf(month) * hoursPerDay);
}

export function intakeService(intake: Withdrawal, context: LakeContext): ServiceItem[] {
  const { cleanYear } = supplyOf(intake, context);
  const wetted = wettedShares(context.daily, intake.elevation);
  const delivered = months.map((month) => at(cleanYear, month).delivered * at(wetted, month));
  const water: ServiceItem = {
    what: "water from elsewhere while the intake falls short or is exposed",
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

const largestDemand = ({ demand }: Intake) => Math.max(...demand);

/** The conduit, with what drives its water. */
function intakePipes(intake: Intake): PipePart[] {
  const flow = largestDemand(intake);
  const drive = driveOf(intake.supply);
  return [{ name: "conduit", size: "conduit", at: ["conduit"], pipe: intake.conduit, flow, drive }];
}

function driveOf(supply: Withdrawal["supply"]): Drive {
  if (supply.by === "pump") return { by: "pump" };
  const { availableHead: head, outletElevation: lowerLevel = Number.POSITIVE_INFINITY } = supply;
  return head === undefined
    ? { by: "lake", lowerLevel, lowerName: "outlet", mayFallShort: true }
    : { by: "head", head, at: ["supply", "availableHead"], isDeliveryChecked: true };
}

export const intake: StructureKind<Intake> = {
  kind: "intake",
  title: "Intake",
  name: "intake",
  commonFields: [
    "conduit/roughness",
    "supply/availableHead",
    "supply/efficiency",
    "supply/energyPrice",
    "supply/marginHead",
    "oxidantAllowed",
  ],
  isBuilt: true,
  hasPublishedCosts: true,
  waterTaken: ({ demand }) => demand,
  lowestField: "elevation",
  reach: atOneElevation,
  size: (structure) => [
    "demand up to ",
    sized(largestDemand(structure), "flow"),
    ", conduit ",
    ...boreWords(structure.conduit),
  ],
  inlet: ({ elevation, demand }) => ({ elevation, flow: demand }),
  rack: (structure) => ({ rack: structure.rack, flow: largestDemand(structure) }),
  pipes: intakePipes,
  walls: ({ rack, conduit, elevation, demand: flow }) => [
    upstreamWall(rackWall(rack, elevation, { flow }), flow),
    upstreamWall(pipeWall(conduit, elevation, { flow }), flow),
  ],
  components: intakeComponents,
  cleanService: intakeService,
  pumps: pumpSummary,
  entries: supplyEntries,
  lowered: (structure, { fall, flowShare }) => ({
    ...structure,
    elevation: structure.elevation - fall,
    demand: structure.demand.map((flow) => flow * flowShare),
  }),
};
