import { colours } from "../words/palette.js";

/** JSON that cannot close the script element it stands in. */
export const safeJson = (value: unknown) => JSON.stringify(value).replaceAll("<", "\\u003c");

export const axis = (title: string, extra: object = {}) => ({
  title: { display: true, text: title, color: colours.ink },
  ticks: { color: colours.ink },
  grid: { color: colours.grid },
  ...extra,
});
