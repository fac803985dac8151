import type { InputDifference } from "./input-differences.js";

/** Changed inputs explained as one. */
export interface InputGroup {
  readonly name: string;
  readonly inputs: readonly InputDifference[];
}

/** Most groups whose orders are drawn; beyond that inputs are grouped by part of the study. */
const mostDrawn = 24;

/**
 * Groups of changed inputs: single inputs if there are at most `mostExact`; else by structure, option or part, the
 * smallest of which are left ungrouped as far as there is room; else by part.
 */
export function inputGroups(differences: readonly InputDifference[], mostExact: number): InputGroup[] {
  const moving = differences.filter(({ movesFigures }) => movesFigures);
  if (moving.length <= mostExact) return moving.map(alone);
  const byOwner = grouped(
    moving,
    ({ owner }) => owner,
    ({ ownerName }) => ownerName,
  );
  if (byOwner.length <= mostExact) return leftApart(byOwner, mostExact);
  if (byOwner.length <= mostDrawn) return byOwner;
  return grouped(moving, partOf, (input) => partNames[partOf(input)] ?? input.ownerName);
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

function grouped(
  inputs: readonly InputDifference[],
  keyOf: (input: InputDifference) => string,
  nameOf: (input: InputDifference) => string,
): InputGroup[] {
  const groups = new Map<string, InputDifference[]>();
  for (const input of inputs) {
    const key = keyOf(input);
    groups.set(key, [...(groups.get(key) ?? []), input]);
  }
  return [...groups.values()].flatMap((members) => {
    const [first] = members;
    if (!first) return [];
    return [members.length === 1 ? alone(first) : { name: nameOf(first), inputs: members }];
  });
}

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
