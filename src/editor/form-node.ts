import type { Problem } from "../study/reading/problems.js";
import type { Writing } from "./amounts/units-offered.js";
import type { CopiedFrom } from "./marks/copied-values.js";
import { pageWords } from "./page-words.js";
import type { Place } from "./study-text.js";
import type { TypicalEntries } from "./typical/typical-text.js";

/** A field with its value and problems, ready for display. */
export interface FormNode {
  /** Its shape in views/partials/field.hbs. */
  readonly shape: Readonly<Partial<Record<Shape, true>>>;
  readonly name: string;
  readonly id: string;
  readonly label: string;
  readonly help: string;
  readonly where: string;
  /** Typical values in words; empty if there are none. */
  readonly typical: string;
  /** Between which values a number typed alone is taken to lie; empty if it is taken as it stands. */
  readonly taken: string;
  /** What an example has here; empty where it has nothing. */
  readonly example: string;
  /** What the value implies, as a velocity in a pipe; empty where nothing is known. */
  readonly implied: string;
  readonly required: boolean;
  /** Whether the answer moves with it though it may be left out. */
  readonly moves: boolean;
  readonly usual: string;
  readonly errors: readonly string[];
  /** Words on a missing or unusual value; empty otherwise. */
  readonly needed: string;
  /** Name of the input in which somebody else who pays is named; empty of other fields. */
  readonly makes: string;
  /** The act that confirms what is unusual here; empty where nothing is. */
  readonly confirm: string;
  readonly value: string;
  /** Ids of texts that describe the input. */
  readonly describedBy: string;
  readonly choices: readonly Choice[];
  readonly unitName: string;
  readonly units: readonly Choice[];
  readonly children: readonly FormNode[];
  /** Button that adds an item, or an absent group. */
  readonly add: string;
  /** Buttons of an item or optional group. */
  readonly acts: readonly { readonly value: string; readonly label: string }[];
}

type Shape =
  | "amount"
  | "line"
  | "long"
  | "csv"
  | "select"
  | "boxes"
  | "date"
  | "months"
  | "group"
  | "absent"
  | "list"
  | "ways";

export interface Choice {
  readonly value: string;
  readonly label: string;
  readonly chosen: boolean;
}

export interface FormContext {
  readonly document: unknown;
  readonly problems: readonly Problem[];
  readonly writing: Writing;
  /** From which typical values are read; forms without it tell none. */
  readonly entries?: TypicalEntries;
  /** What entries imply, at their places. */
  /** Documents of which fields show a value, those in the same units first. */
  readonly examples?: readonly unknown[];
  /** The example that the study was copied from; absent on pages that were taken over. */
  readonly copied?: CopiedFrom | undefined;
  readonly implied?: ReadonlyArray<{ readonly at: readonly PropertyKey[]; readonly text: string }>;
}

export const idOf = (at: Place) => `f-${at.map(String).join("-")}`.replace(/[^\w-]/g, "-");

/** "Needed", with what is allowed unless obvious. */
export const neededText = (allowed: string) =>
  ["a text", "a list", "a group of fields"].includes(allowed) ? "Needed." : `Needed: ${pageWords(allowed)}.`;

/** A problem without its place, shown beside the field in the words of the page. */
export const problemText = (problem: Problem): string => pageWords(plainText(problem));

const plainText = ({ found, allowed, remedy, unusual }: Problem): string => {
  if (unusual) return `Unusual: ${found}; usually ${allowed}. ${remedy}`;
  return found === "nothing" ? neededText(allowed) : `Found ${found}; allowed: ${allowed}. ${remedy}`;
};
