import { at } from "../../lists.js";
import { splitByShares } from "./split.js";

/** Who pays: one bearer by its id, or several by shares that make up 1. */
export type Bearer = string | ReadonlyArray<{ readonly id: string; readonly share: number }>;

export const bearerIds = (bearer: Bearer): string[] =>
  typeof bearer === "string" ? [bearer] : bearer.map(({ id }) => id);

/** What each bearer pays of an amount: whole cents that sum to it. @throws SplitError for shares that do not make up 1 */
export function centsByBearer(bearer: Bearer, cents: number): Array<readonly [id: string, cents: number]> {
  if (typeof bearer === "string") return [[bearer, cents]];
  const parts = splitByShares(
    cents,
    bearer.map(({ share }) => share),
  );
  return bearer.map(({ id }, index) => [id, at(parts, index)]);
}
