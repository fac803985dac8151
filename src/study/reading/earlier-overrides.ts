/** A group of a document as its text gives it. */
export type Group = Record<string, unknown>;

export const isGroup = (value: unknown): value is Group =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/** A part of a document in today's terms, and what that did, for its author. */
export interface Today {
  readonly value: unknown;
  readonly told: readonly string[];
}

/** An assumption that a study may still have a value of its own for: what comes in its place, in words too. */
interface EarlierOverride {
  readonly today: (override: Group) => readonly Group[];
  readonly told: string;
}

const ownChanceId = "arrival.establishment-per-fouled-launch";
const rackRateId = "cleaning.rack.rate";

const earlier: ReadonlyMap<unknown, EarlierOverride> = new Map([
  [
    ownChanceId,
    {
      today: (override) => [{ ...override, id: "arrival.founding-unknown" }],
      told: `overrides: ${ownChanceId} was per launch with live mussels. Its value is now taken for arrival.founding-unknown, per launch with mussels dead or alive; the launches that were entered as carrying live mussels keep it. Check both.`,
    },
  ],
  [
    rackRateId,
    {
      today: (override) => [
        { ...override, id: "cleaning.rack.base" },
        {
          id: "cleaning.rack.removal",
          value: "$0/kg",
          reason: "The price by area of an earlier version of this study was for whatever is on the rack",
        },
      ],
      told: `overrides: ${rackRateId} was the whole price of cleaning a rack by its area. It is now cleaning.rack.base, the part by area, with nothing by mass beside it (cleaning.rack.removal), so that it costs what it did. Check whether your price rises with what is on the rack.`,
    },
  ],
]);

export const hasOwnChance = (overrides: unknown): boolean =>
  Array.isArray(overrides) && overrides.some((each: unknown) => isGroup(each) && each.id === ownChanceId);

/** Own values for assumptions that are read no longer, as values for those in their place. */
export function overridesToday(overrides: unknown): Today {
  if (!Array.isArray(overrides)) return { value: overrides, told: [] };
  const told = new Set<string>();
  const value = overrides.flatMap((each: unknown): readonly unknown[] => {
    const found = isGroup(each) ? earlier.get(each.id) : undefined;
    if (found === undefined || !isGroup(each)) return [each];
    told.add(found.told);
    return found.today(each);
  });
  return { value, told: [...told] };
}
