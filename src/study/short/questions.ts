import { at } from "../../lists.js";
import { monthNames } from "../format/month-names.js";
import type { Question, QuestionGroup } from "./question.js";

const monthTitles = [
  ...["January", "February", "March", "April", "May", "June"],
  ...["July", "August", "September", "October", "November", "December"],
];
export const monthTitle = (name: (typeof monthNames)[number]): string =>
  at(monthTitles, monthNames.indexOf(name));
const monthChoices = monthNames.map((name, month) => [name, at(monthTitles, month)] as const);

const program: readonly Question[] = [
  { key: "from", label: "First month", help: "", choices: monthChoices, typical: "typical.season-from" },
  { key: "until", label: "Last month", help: "", choices: monthChoices, typical: "typical.season-until" },
  {
    key: "hours",
    label: "Hours a day",
    help: "Each station is open",
    dimension: "hours",
    typical: "typical.hours-a-day",
  },
  { key: "stations", label: "Stations", help: "", dimension: "count", typical: "typical.stations" },
  {
    key: "gated",
    label: "Ramps locked at other hours?",
    help: "",
    choices: [
      ["yes", "Yes"],
      ["no", "No"],
    ],
  },
  {
    key: "cost",
    label: "Cost a year",
    help: "Less fees and grants; if empty, estimated from hours and wages",
    dimension: "moneyPerYear",
  },
];

export const questionGroups: readonly QuestionGroup[] = [
  {
    ...{ key: "", title: "The lake", screen: 1, repeats: false },
    questions: [
      { key: "name", label: "Name of the lake", help: "" },
      {
        key: "units",
        label: "Units",
        help: "Of numbers without a unit",
        isSettled: true,
        choices: [
          ["us", "US units (ft, acres, cfs, °F)"],
          ["si", "Metric units (m, ha, m³/s, °C)"],
        ],
      },
      {
        key: "place",
        label: "State, or latitude",
        help: "Idaho, or 44.5",
        dimension: "count",
        typical: "typical.latitude",
      },
      {
        key: "summerLevel",
        label: "Level in summer",
        help: "Water surface elevation",
        dimension: "elevation",
        typical: "typical.elevation",
      },
      { key: "winterLevel", label: "Level in winter", help: "", dimension: "elevation" },
      { key: "area", label: "Area", help: "", dimension: "landArea", typical: "typical.lake-area" },
      { key: "depth", label: "Greatest depth", help: "", dimension: "length", typical: "typical.lake-depth" },
      {
        key: "hardness",
        label: "Is the water hard?",
        help: "",
        choices: [
          ["soft", "Soft"],
          ["moderate", "Moderately hard"],
          ["hard", "Hard"],
          ["very-hard", "Very hard"],
        ],
      },
      {
        key: "calcium",
        label: "Calcium, if known",
        help: "Used instead of the hardness",
        dimension: "concentration",
        typical: "typical.calcium-unknown",
      },
      {
        key: "warmestMonth",
        label: "Surface temperature, warmest month",
        help: "",
        dimension: "temperature",
      },
      {
        key: "infestedSince",
        label: "Year mussels were found",
        help: "Empty if none were",
        dimension: "count",
      },
    ],
  },
  {
    ...{ key: "intakes", title: "Intake", screen: 1, repeats: true },
    questions: [
      {
        key: "use",
        label: "What its water is for",
        help: "",
        choices: [
          ["town", "A town"],
          ["irrigation", "Irrigation"],
          ["industry", "A plant or mill"],
        ],
      },
      { key: "flow", label: "Largest flow", help: "", dimension: "flow", typical: "typical.flow-town" },
      { key: "pipe", label: "Pipe size", help: "Inside diameter", dimension: "smallLength" },
      {
        key: "length",
        label: "Pipe length",
        help: "",
        dimension: "length",
        typical: "typical.conduit-length",
      },
      {
        key: "tastes",
        label: "Treated for taste and odor?",
        help: "",
        choices: [
          ["yes", "Yes"],
          ["no", "No"],
        ],
      },
      {
        key: "depth",
        label: "Depth",
        help: "Below the summer level",
        dimension: "length",
        typical: "typical.intake-depth",
      },
    ],
  },
  {
    ...{ key: "plant", title: "Power plant", screen: 1, repeats: false },
    presence: "Is there a power plant?",
    questions: [
      {
        key: "power",
        label: "Megawatts",
        help: "All units together",
        dimension: "count",
        typical: "typical.plant-power",
      },
      {
        key: "head",
        label: "Head",
        help: "Summer level to tailwater",
        dimension: "length",
        typical: "typical.plant-head",
      },
      {
        key: "units",
        label: "Number of units",
        help: "",
        dimension: "count",
        typical: "typical.plant-units",
      },
    ],
  },
  {
    ...{ key: "docks", title: "Docks", screen: 1, repeats: false },
    questions: [
      {
        key: "slips",
        label: "Slips",
        help: "0 if there are none",
        dimension: "count",
        typical: "typical.slips",
      },
      { key: "area", label: "Or wetted area", help: "Of all floats, if known", dimension: "area" },
    ],
  },
  {
    ...{ key: "", title: "Ramps", screen: 1, repeats: false },
    questions: [
      { key: "ramps", label: "Launch ramps", help: "", dimension: "count", typical: "typical.ramps" },
    ],
  },
  {
    ...{ key: "", title: "Boats", screen: 2, repeats: false },
    questions: [
      {
        key: "launches",
        label: "Launches a year",
        help: "",
        dimension: "count",
        typical: "typical.launches",
      },
      {
        key: "fromAway",
        label: "Boats coming from other waters",
        help: "Percent of launches",
        dimension: "share",
        typical: "typical.away",
      },
      {
        key: "nearestInfested",
        label: "Drive to the nearest infested water",
        help: "With its unit: 5 h, 2 d",
      },
    ],
  },
  {
    ...{ key: "wanted", title: "The proposed program", screen: 2, repeats: false },
    questions: program,
  },
  {
    ...{ key: "inForce", title: "The current program", screen: 2, repeats: false },
    presence: "Is there a program now?",
    questions: program,
  },
  {
    ...{ key: "", title: "Years and money", screen: 2, repeats: false },
    questions: [
      {
        key: "horizon",
        label: "Years the study covers",
        help: "",
        dimension: "years",
        typical: "typical.horizon",
      },
      { key: "currency", label: "Currency", help: "Three-letter code; USD if empty" },
      { key: "exchangeRate", label: "Exchange rate", help: "If not USD: units of it per US dollar" },
    ],
  },
];
