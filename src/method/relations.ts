import { deliveryRelations } from "./relations/deliveries.js";
import { dockRelations } from "./relations/docks.js";
import { lakeRelations } from "./relations/lake.js";
import { machineRelations } from "./relations/machines.js";
import { moneyRelations } from "./relations/money.js";
import { musselRelations } from "./relations/mussels.js";
import { outcomeRelations } from "./relations/outcomes.js";
import { pipeRelations } from "./relations/pipes.js";
import { planRelations } from "./relations/plans.js";
import { priceRelations } from "./relations/prices.js";
import { programRelations } from "./relations/program.js";
import { rackRelations } from "./relations/racks.js";
import { rawWaterRelations } from "./relations/raw-water.js";
import type { RelationGroup } from "./relations/relation.js";

/**
 * Every relation that the model computes, in the order in which it computes them. A new one is one entry in the list
 * of its subject: words, formulas, symbols, source keys and the function, whose comment must state the formula.
 */
export const relationGroups: readonly RelationGroup[] = [
  lakeRelations,
  musselRelations,
  pipeRelations,
  rackRelations,
  machineRelations,
  rawWaterRelations,
  deliveryRelations,
  dockRelations,
  planRelations,
  programRelations,
  moneyRelations,
  priceRelations,
  outcomeRelations,
];
