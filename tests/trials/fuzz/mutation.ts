import fc from "fast-check";
import { anyNumber, anyText, anyValue, units } from "./values.js";

/** One change to a document. Numbers stand for places, so that it fits any document. */
export interface Mutation {
  readonly way: (typeof ways)[number];
  readonly at: number;
  readonly other: number;
  readonly value: unknown;
  readonly number: number;
  readonly text: string;
  readonly unit: string;
}

const ways = [
  "number",
  "number",
  "number",
  "delete",
  "replace",
  "copy",
  "swap",
  "unit",
  "range",
  "repeat",
  "rename",
  "lines",
  "reverse",
] as const;

const anyPlace = fc.nat(100_000);

export const mutation: fc.Arbitrary<Mutation> = fc.record({
  way: fc.constantFrom(...ways),
  at: anyPlace,
  other: anyPlace,
  value: anyValue,
  number: anyNumber,
  text: anyText,
  unit: fc.constantFrom(...units),
});

interface Spot {
  readonly holder: object;
  readonly key: string | number;
}

/** A changed copy of a document. */
export function mutated(document: unknown, mutations: readonly Mutation[]): unknown {
  const copy: unknown = structuredClone(document);
  for (const each of mutations) {
    const spots = spotsIn(copy);
    const spot = spots[each.at % spots.length];
    const other = spots[each.other % spots.length];
    if (spot && other) change(spot, other, each);
  }
  return copy;
}

function spotsIn(value: unknown): Spot[] {
  if (typeof value !== "object" || value === null) return [];
  const keys = Array.isArray(value) ? value.map((_item, index) => index) : Object.keys(value);
  return keys.flatMap((key) => [{ holder: value, key }, ...spotsIn(Reflect.get(value, key))]);
}

const valueAt = ({ holder, key }: Spot): unknown => Reflect.get(holder, key);

/** Also under names that assignment treats in a way of its own. */
const put = ({ holder, key }: Spot, value: unknown): void => {
  Object.defineProperty(holder, key, { value, writable: true, enumerable: true, configurable: true });
};

function remove({ holder, key }: Spot): void {
  if (Array.isArray(holder)) holder.splice(Number(key), 1);
  else Reflect.deleteProperty(holder, key);
}

function change(spot: Spot, other: Spot, mutation: Mutation): void {
  const value = valueAt(spot);
  switch (mutation.way) {
    case "number":
    case "unit":
    case "range":
    case "lines":
      put(spot, changedLeaf(value, mutation));
      break;
    case "delete":
      remove(spot);
      break;
    case "replace":
      put(spot, mutation.value);
      break;
    case "copy":
      put(spot, structuredClone(valueAt(other)));
      break;
    case "swap": {
      const mine = structuredClone(value);
      put(spot, structuredClone(valueAt(other)));
      put(other, mine);
      break;
    }
    case "repeat":
      if (Array.isArray(spot.holder)) spot.holder.splice(Number(spot.key), 0, structuredClone(value));
      break;
    case "rename":
      if (Array.isArray(spot.holder)) break;
      remove(spot);
      put({ ...spot, key: mutation.text }, value);
      break;
    case "reverse":
      if (Array.isArray(value)) value.reverse();
      break;
  }
}

const firstNumber = /-?\d[\d,]*(\.\d+)?/;

function changedLeaf(value: unknown, { way, number, unit, other, text }: Mutation): unknown {
  if (way === "lines") return typeof value === "string" ? changedLines(value, other, text) : value;
  if (typeof value === "number") return way === "number" ? number : `${value} ${unit}`;
  if (typeof value !== "string" || !firstNumber.test(value)) return value;
  if (way === "number") return value.replace(firstNumber, () => String(number));
  if (way === "unit") return value.replace(/[^\d.,\s$€]+.*$/, () => unit);
  return value.replace(firstNumber, (found) => `${found} to ${number}`);
}

/** A table with one of its lines lost, doubled, swapped with the next, cut or overwritten. */
export function changedLines(table: string, choice: number, text: string): string {
  const lines = table.split("\n");
  const index = Math.floor(choice / 6) % lines.length;
  const line = lines[index] ?? "";
  const put: readonly (readonly string[])[] = [
    [],
    [line, line],
    [lines[index + 1] ?? "", line],
    [line.slice(0, Math.floor(line.length / 2))],
    [line.replace(firstNumber, () => text)],
    [`${line},"${text}`],
  ];
  lines.splice(index, 1, ...(put[choice % 6] ?? []));
  return lines.join("\n");
}
