import type { CostLine } from "./line.js";

/**
 * What a cost of an infestation is told as: damage that the model works out, duties and policies that staff entered,
 * and other losses that they entered, which are in the second of the two accounts alone.
 */
export const accounts = ["damage", "duty", "policy", "other"] as const;
export type Account = (typeof accounts)[number];

/** Accounts of amounts that staff entered as they stand. */
export type EnteredAccount = Exclude<Account, "damage">;

const entered: Partial<Record<CostLine["type"], EnteredAccount>> = {
  duty: "duty",
  policy: "policy",
  apart: "other",
};

export const accountOf = ({ type }: Pick<CostLine, "type">): Account => entered[type] ?? "damage";

/**
 * The ratio without one account of the loss avoided: R = (L − D)/C, of the whole loss avoided L, its part D and the
 * added cost C; none where nothing is added.
 */
export function ratioWithout(avoidedLoss: number, part: number, addedCost: number): number | undefined {
  return addedCost > 0 ? (avoidedLoss - part) / addedCost : undefined;
}
