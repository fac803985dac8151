import type { CostLine } from "./line.js";

/** Groups of costs whose prices may rise otherwise than prices in general. */
export const costGroups = [
  "energy",
  "water",
  "labour",
  "treatment",
  "wages",
  "equipment",
  "fees",
  "other",
] as const;
export type CostGroup = (typeof costGroups)[number];

/** The group of a line, by what its quantity measures and by its type. */
export function costGroupOf({ type, quantityKind }: Pick<CostLine, "type" | "quantityKind">): CostGroup {
  const ofProgram = type === "program" || type === "revenue";
  switch (quantityKind) {
    case "energy":
      return "energy";
    case "hours":
    case "visits":
      return ofProgram ? "wages" : "labour";
    case "each":
      return ofProgram ? (type === "revenue" ? "fees" : "equipment") : "other";
    case "volume":
      return type === "protection" ? "treatment" : "water";
    default:
      return type === "protection" ? "treatment" : "other";
  }
}
