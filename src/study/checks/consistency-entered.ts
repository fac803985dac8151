import type { Contradiction } from "../reading/contradiction.js";
import type { SoundParts } from "./sound-parts.js";

/** Of two policies at most one can be followed: from a lake that is closed to boats, none leave. */
const excluding: ReadonlyArray<readonly [string, string]> = [["closed-to-boats", "checks-of-leaving-boats"]];

/** Contradictions of yearly amounts that staff entered as they stand: years of prices, accounts and policies. */
export function enteredProblems({ structures, money }: SoundParts): Contradiction[] {
  const items = structures.flatMap(({ index, value }) =>
    "items" in value
      ? value.items.map((item, place) => ({ item, path: ["structures", index, "items", place] }))
      : [],
  );
  return [
    ...items.flatMap(({ item, path }) => [
      ...yearProblems(item, money, path),
      ...accountProblems(item, path),
    ]),
    ...policyProblems(items),
  ];
}

type Item = Extract<SoundParts["structures"][number]["value"], { items: unknown }>["items"][number];

function yearProblems(
  { cost, pricesOf }: Item,
  money: SoundParts["money"],
  path: Contradiction["path"],
): Contradiction[] {
  if (!money || pricesOf === undefined || pricesOf === money.priceYear) return [];
  return [
    {
      path: [...path, "pricesOf"],
      found: `${cost.text} in prices of ${pricesOf}`,
      allowed: `an amount in prices of ${money.priceYear}, the study's price year`,
      remedy: `Multiply it by the index of ${money.priceYear} over that of ${pricesOf}, enter the result, and say so in its origin.`,
    },
  ];
}

function accountProblems({ apart, policy }: Item, path: Contradiction["path"]): Contradiction[] {
  if (!apart || policy === undefined) return [];
  return [
    {
      path: [...path, "policy"],
      found: `${policy} beside apart: true`,
      allowed: "a policy that is paid for, or a loss that is not infrastructure, not both",
      remedy: "Remove one of the two; enter what a policy costs and what it loses others as two items.",
    },
  ];
}

function policyProblems(items: ReadonlyArray<{ item: Item; path: Contradiction["path"] }>): Contradiction[] {
  return excluding.flatMap(([one, other]) => {
    const first = items.find(({ item }) => item.policy === one);
    const second = items.find(({ item }) => item.policy === other);
    if (!first || !second) return [];
    return [
      {
        path: [...second.path, "policy"],
        found: `${other} (“${second.item.name}”) beside ${one} (“${first.item.name}”)`,
        allowed: "one of the two: they exclude each other",
        remedy:
          "Remove the item of the policy that would not be followed, or put each into a study of its own.",
      },
    ];
  });
}
