import { z } from "zod";
import { placeName } from "../short/typical-value.js";
import type { Problem } from "./problems.js";

const longest = 1000;

/** Unusual entries that the author looked at and found right. */
export const confirmedEntries = z
  .array(
    z.strictObject({
      place: z.string().max(longest, `at most ${longest} characters`),
      found: z.string().max(longest, `at most ${longest} characters`),
    }),
  )
  .max(2000, "at most 2,000 entries")
  .default([])
  .meta({
    description:
      "Unusual entries that were confirmed, each with what was found; one counts no more once something else is found there",
  });

export type Confirmed = z.output<typeof confirmedEntries>[number];

/** A place by the ids of its items, which stay when rows are moved. */
export function placeByIds(document: unknown, at: readonly PropertyKey[]): string {
  let value = document;
  return at
    .map((key) => {
      value = typeof value === "object" && value !== null ? Reflect.get(value, key) : undefined;
      return typeof key === "number" ? (placeName(value) ?? String(key)) : String(key);
    })
    .join("/");
}

/** An unusual entry as it is confirmed. */
export const confirmationOf = ({ at, found }: Problem, document: unknown): Confirmed => ({
  place: placeByIds(document, at ?? []).slice(0, longest),
  found: found.slice(0, longest),
});

/** Whether just this was confirmed: another value finds something else. */
export function isConfirmed(problem: Problem, document: unknown, confirmed: readonly Confirmed[]): boolean {
  const { place, found } = confirmationOf(problem, document);
  return confirmed.some((each) => each.place === place && each.found === found);
}
