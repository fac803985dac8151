import { sumOf } from "../../lists.js";
import type { WrittenStudy } from "../format/schema.js";
import type { Contradiction } from "../reading/contradiction.js";
import { describe } from "../reading/problems.js";
import type { SoundParts } from "./sound-parts.js";

type Place = Contradiction["path"];

interface Part {
  readonly name: string;
  readonly share: { readonly value: number; readonly text: string };
}

/** What is a whole, and the rounding error allowed in the sum of its shares. */
const wholes = {
  launches: { words: "shares of all launches that add up to 100 %", tolerance: 1e-6 },
  // Shares that split cents.
  cost: { words: "shares that add up to 100 %", tolerance: 1e-9 },
} as const;

export type Whole = keyof typeof wholes;

/** Shares that do not make up their whole, each with its name. */
export function shareProblems(parts: readonly Part[], path: Place, whole: Whole): Contradiction[] {
  const sum = sumOf(parts.map(({ share }) => share.value));
  const { words, tolerance } = wholes[whole];
  if (Math.abs(sum - 1) <= tolerance) return [];
  const listed = parts.slice(0, mostListed).map(({ name, share }) => `${describe(name)} ${share.text}`);
  const rest = parts.length > mostListed ? [`${parts.length - mostListed} more`] : [];
  const found = `shares that add up to ${Number((sum * 100).toFixed(4))} %: ${[...listed, ...rest].join(", ")}`;
  return [{ path, found, allowed: words, remedy: "Correct one of the shares." }];
}

const mostListed = 5;

export type Payers = WrittenStudy["money"]["bearers"];

/** Unknown bearers of a structure or response, and shares that do not add up to 100 %. */
export function bearerShareProblems(
  bearer: SoundParts["structures"][number]["value"]["bearer"],
  path: Place,
  known: Payers,
): Contradiction[] {
  const ids = typeof bearer === "string" ? [bearer] : bearer.map(({ id }) => id);
  const allowed = `an id from money.bearers: ${known.map(({ id }) => id).join(", ")}`;
  const names = new Map(known.map(({ id, name }) => [id, name]));
  const unknown = ids.filter((id) => !names.has(id)).map((id) => ({ path, found: `"${id}"`, allowed }));
  if (typeof bearer === "string") return unknown;
  const parts = bearer.map(({ id, share }) => ({ name: names.get(id) ?? id, share }));
  return [...unknown, ...shareProblems(parts, path, "cost")];
}
