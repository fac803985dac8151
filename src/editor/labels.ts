import { structureKinds } from "../model/structures/kinds.js";

/** Keys and values whose labels cannot be derived from them. */
const words: Readonly<Record<string, string>> = {
  ph: "pH",
  id: "Id",
  on: "Day of the year",
  by: "Supplied by",
  bearer: "Who pays",
  payer: "Who pays",
  bearers: "Those who pay",
  programBearer: "Who pays for the program",
  of: "Boats looked at",
  found: "Boats found fouled",
  csv: "Lines of the record (CSV)",
  invented: "Invented data",
  board: "Board that decides",
  authority: "Authority",
  prepared: "Date of the study",
  units: "Units",
  us: "US units",
  si: "Metric units",
  hazenWilliamsC: "Hazen–Williams C",
  ednaSamples: "eDNA samples",
  record: "Record of levels",
  drawdown: "Drawdown: levels through the year",
  otherSchedules: "Other schedules",
  storageTable: "Storage table",
  pinned: "Prescribed protection plans",
  fixtures: "Fixtures",
  running: "While running",
  serves: "What it serves",
  upstream: "Tapped from",
  screenArea: "Area of the screen",
  steps: "Steps of the inspection",
  open: "Open hours",
  yearly: "Other yearly costs",
  classes: "Vessel classes",
  seasons: "Log of seasons",
  living: "With live mussels",
  sinceInfestedWater: "Time out of infested water",
  lastWater: "Floated last on",
  moored: "Lies afloat",
  residualWater: "Water still aboard",
  items: "Lake-wide duties and losses",
  quagga: "Quagga mussel",
  zebra: "Zebra mussel",
  ...Object.fromEntries(structureKinds.map(({ kind, title }) => [kind, title])),
  whittier: "Whittier and others",
  "mackie-claudi": "Mackie and Claudi",
  jan: "January",
  feb: "February",
  mar: "March",
  apr: "April",
  may: "May",
  jun: "June",
  jul: "July",
  aug: "August",
  sep: "September",
  oct: "October",
  nov: "November",
  dec: "December",
};

const properNames =
  /^(January|February|March|April|May|June|July|August|September|October|November|December|Hazen|Mackie|Whittier)\b/;

/** A label within a sentence. Names and abbreviations keep their capitals: "pH", "US units", "January". */
export const lowered = (label: string): string =>
  /^[A-Z]{2}/.test(label) || properNames.test(label) ? label : label.charAt(0).toLowerCase() + label.slice(1);

/** A label for a key or value: "maximumElevation" is "Maximum elevation". */
export function labelOf(key: string): string {
  const known = words[key];
  if (known !== undefined) return known;
  const spaced = key.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`).replaceAll("-", " ");
  return spaced.charAt(0).toUpperCase() + spaced.slice(1);
}
