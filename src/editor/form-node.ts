import type { Problem } from "../study/reading/problems.js";
import type { Place } from "./study-text.js";
import type { Writing } from "./units-offered.js";

/** A field with its value and what is wrong with it, ready to be shown. */
export interface FormNode {
  /** Which of the shapes of views/partials/field.hbs. */
  readonly shape: Readonly<Partial<Record<Shape, true>>>;
  readonly name: string;
  readonly id: string;
  readonly label: string;
  readonly help: string;
  readonly where: string;
  readonly required: boolean;
  readonly usual: string;
  readonly errors: readonly string[];
  /** What is not there yet, or what is there and unusual, in words; empty otherwise. */
  readonly needed: string;
  readonly value: string;
  /** Ids of the texts that describe the input. */
  readonly describedBy: string;
  readonly choices: readonly Choice[];
  readonly unitName: string;
  readonly units: readonly Choice[];
  readonly children: readonly FormNode[];
  /** The button that adds an item, or the group itself where it is not there. */
  readonly add: string;
  /** Buttons of an item or of a group that may be left out. */
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
}

export const idOf = (at: Place) => `f-${at.map(String).join("-")}`.replace(/[^\w-]/g, "-");

/** "Needed", with what is allowed unless that goes without saying. */
export const neededText = (allowed: string) =>
  ["a text", "a list", "a group of fields"].includes(allowed) ? "Needed." : `Needed: ${allowed}.`;

/** What is wrong, without its place: it stands beside the field. */
export const problemText = ({ found, allowed, remedy, unusual }: Problem): string => {
  if (unusual) return `Unusual: ${found}; usually ${allowed}. ${remedy}`;
  return found === "nothing" ? neededText(allowed) : `Found ${found}; allowed: ${allowed}. ${remedy}`;
};
