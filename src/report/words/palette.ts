import { readFileSync } from "node:fs";
import { join } from "node:path";
import { viewsFolder } from "../document/assets.js";

const tokens = readFileSync(join(viewsFolder, "tokens.css"), "utf8");

/** A colour of views/tokens.css by its name there. */
function colour(name: string): string {
  const value = new RegExp(`--${name}:\\s*([^;]+);`).exec(tokens)?.[1];
  if (value === undefined) throw new Error(`views/tokens.css has no colour --${name}`);
  return value;
}

/** Colours of charts, as the style sheet has them. */
export const colours = {
  ink: colour("ink"),
  paper: colour("paper"),
  water: colour("water"),
  shell: colour("shell"),
  band: colour("band"),
  bandFill: colour("band-fill"),
  waterFill: colour("water-fill"),
  brick: colour("brick"),
  grid: colour("grid"),
} as const;

/** Doing nothing is the rack side (shell); programs are the ramp side (water), told apart by dash as well. */
export const optionColours = [colours.shell, colours.water, colours.ink, colours.brick] as const;
/** Told apart in grey print as well, over the short sample of a key. */
export const dashes: ReadonlyArray<readonly number[]> = [[], [8, 4], [2, 3], [8, 5, 2, 5]];
