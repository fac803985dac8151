import type { LineGroup } from "../program/groups.js";
import type { CostLine } from "./line.js";

/** Groups of costs whose prices may rise otherwise than prices in general. */
export const priceGroups = [
  "energy",
  "water",
  "labour",
  "treatment",
  "wages",
  "equipment",
  "fees",
  "other",
] as const;
export type PriceGroup = (typeof priceGroups)[number];

/** Groups of a program's lines that are equipment. */
const equipment: ReadonlySet<LineGroup> = new Set(["equipment", "hot-wash", "vehicles", "site-works"]);

/**
 * The group of a line, by what its quantity measures and by its type.
 * @param line of a structure, or of a program with its group there
 */
export function priceGroupOf(
  line: Pick<CostLine, "type" | "quantityKind"> & { readonly group?: LineGroup | undefined },
): PriceGroup {
  const { type, quantityKind, group } = line;
  const ofProgram = type === "program" || type === "revenue";
  if (quantityKind === "energy") return "energy";
  if (quantityKind === "hours" || quantityKind === "visits") return ofProgram ? "wages" : "labour";
  if (type === "protection") return "treatment";
  if (quantityKind === "volume") return "water";
  if (group === "fees") return "fees";
  return group !== undefined && equipment.has(group) ? "equipment" : "other";
}
