import type { InputDifference } from "./input-differences.js";

/** Changed inputs explained as one. */
export interface InputGroup {
  readonly name: string;
  readonly inputs: readonly InputDifference[];
  /** Of those that matter too little to stand alone: the most that one of them moves by itself, in cents. */
  readonly mostAlone?: number;
}

/**
 * Changed inputs in at most `most` groups: each by itself where there is room; else by the structure, option or part that
 * they stand in, of which the smallest are left apart as far as there is room. Where these are too many, the smallest of
 * the part that has most of them are one group, then of the next part, and at last the smallest of all.
 */
export function inputGroups(differences: readonly InputDifference[], most: number): InputGroup[] {
  const moving = differences.filter(({ movesFigures }) => movesFigures);
  if (moving.length <= most) return moving.map(alone);
  return leftApart(joinedToFit(groupedByOwner(moving), most), most);
}

const alone = (input: InputDifference): InputGroup => ({ name: fullName(input), inputs: [input] });

/** An input's name, with its structure or option if that is not clear. */
function fullName({ name, owner, ownerName }: InputDifference): string {
  return owner.includes("/") && !name.includes(ownerName) ? `${name}, ${ownerName}` : name;
}

/** The request counts as one part with the options. */
function partOf({ owner }: InputDifference): string {
  const [part = ""] = owner.split("/");
  return part === "study" ? "options" : part;
}

const partNames: Record<string, string> = { structures: "structures", options: "program options" };

function groupedByOwner(inputs: readonly InputDifference[]): InputGroup[] {
  const owners = new Map<string, InputDifference[]>();
  for (const input of inputs) owners.set(input.owner, [...(owners.get(input.owner) ?? []), input]);
  return [...owners.values()].flatMap((members) => {
    const [first] = members;
    if (!first) return [];
    return [members.length === 1 ? alone(first) : { name: first.ownerName, inputs: members }];
  });
}

function joinedToFit(owners: readonly InputGroup[], most: number): InputGroup[] {
  const parts = new Map<string, InputGroup[]>();
  for (const group of owners) {
    const part = partOfGroup(group);
    parts.set(part, [...(parts.get(part) ?? []), group]);
  }
  const byCount = [...parts].sort(([, one], [, other]) => other.length - one.length);
  let groups = [...owners];
  for (const [part, members] of byCount) {
    const joined = smallest(members, groups.length - most + 1);
    if (joined.length < 2) continue;
    const name = partNames[part] ?? part;
    groups = withJoined(groups, joined, joined.length === members.length ? name : `other ${name}`);
  }
  const rest = smallest(groups, groups.length - most + 1);
  if (rest.length < 2) return groups;
  const names = groups.filter((group) => rest.includes(group)).map(({ name }) => name);
  return withJoined(groups, rest, listed(names));
}

const partOfGroup = ({ inputs: [first] }: InputGroup): string => (first ? partOf(first) : "");

/** Those with the fewest inputs; of as many, the last. */
const smallest = (groups: readonly InputGroup[], count: number): InputGroup[] =>
  groups
    .toReversed()
    .sort((one, other) => one.inputs.length - other.inputs.length)
    .slice(0, Math.max(0, count));

function withJoined(
  groups: readonly InputGroup[],
  joined: readonly InputGroup[],
  name: string,
): InputGroup[] {
  const inputs = groups.filter((group) => joined.includes(group)).flatMap((group) => group.inputs);
  return [...groups.filter((group) => !joined.includes(group)), { name, inputs }];
}

const listed = (names: readonly string[]): string => new Intl.ListFormat("en-GB").format(names);

function leftApart(groups: readonly InputGroup[], most: number): InputGroup[] {
  const bySize = groups.toSorted((one, other) => one.inputs.length - other.inputs.length);
  let count = groups.length;
  const apart = new Set<InputGroup>();
  for (const group of bySize) {
    if (count + group.inputs.length - 1 > most) break;
    count += group.inputs.length - 1;
    apart.add(group);
  }
  return groups.flatMap((group) => (apart.has(group) ? group.inputs.map(alone) : [group]));
}
