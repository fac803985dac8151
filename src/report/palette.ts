/** Colours of the report and of its charts; the style sheet takes them from here. */
export const colours = {
  ink: "#1d2b33",
  paper: "#fbfaf7",
  water: "#2f6f7e",
  shell: "#a8742c",
  band: "#d9cfbd",
  bandFill: "rgba(217, 207, 189, 0.55)",
  waterFill: "rgba(47, 111, 126, 0.2)",
  brick: "#9b3d2f",
  grid: "#e4dfd4",
} as const;

/** Doing nothing is the rack side (shell); programs are the ramp side (water), told apart by dash as well. */
export const optionColours = [colours.shell, colours.water, colours.ink, colours.brick] as const;
/** A legend strokes its sample there and back: over its 34 pixels the long dashes fall on themselves. */
export const dashes: ReadonlyArray<readonly number[]> = [[], [8, 4], [2, 3], [8, 5, 2, 5]];
