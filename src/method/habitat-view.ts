import type { AssumptionSet } from "../assumptions/entry.js";
import type { InfestedLake } from "../assumptions/habitat/lakes.js";
import type { Assumed } from "../model/assumed.js";
import { limitingOf, type VariableClass, waterClasses } from "../model/lake/suitability.js";
import { significant } from "../report/words/format.js";
import { groupRow, head, num, type RowView, row, type TableView } from "../report/words/view-types.js";

export interface HabitatView {
  readonly lakes: TableView;
  /** Which lakes come out against what is known of them. */
  readonly disagreeing: string;
  readonly leftOut: string;
}

type Known = Pick<InfestedLake, "species" | "water">;

/** What the model makes of water by all that was read of it. */
const limitingIn = ({ species, water }: Known, assumed: Assumed): VariableClass =>
  limitingOf(waterClasses({ species, calciumScheme: "whittier", chemistry: water }, assumed));

const agreeing: ReadonlySet<string> = new Set(["moderate", "high"]);

/** Calcium of water in which mussels next to never last, mg/L. */
const softCalcium = 4.5;

/** Lakes known to be infested by region, each with the class that its water has here. */
export function habitatView({ entries, habitatLakes }: AssumptionSet): HabitatView {
  const assumed: Assumed = (id) => entries.get(id)?.value ?? Number.NaN;
  const { lakes, leftOut } = habitatLakes;
  const regions = [...new Set(lakes.map(({ region }) => region))];
  return {
    lakes: {
      id: "table-habitat-backtest",
      caption: "Lakes known to be infested, and water that is too soft, as the model classes them",
      head: head(
        "Lake",
        "Mussel",
        "What was read of its water",
        "Limiting",
        "Class",
        num("Weight"),
        "Sources",
      ),
      rows: [
        ...regions.flatMap((region) => [
          groupRow(region),
          ...lakes.filter((lake) => lake.region === region).map((lake) => lakeRow(lake, assumed)),
        ]),
        groupRow("too soft"),
        ...(["zebra", "quagga"] as const).map((species) => softRow(species, assumed)),
      ],
      note: "Each is judged by what was read of its water and by nothing else; pH, oxygen and temperature of none was read, calcium of one. The survey was taken in 1972 to 1975, before mussels came. Classes of alkalinity and conductivity are from memory. Sources: of the water, then of the infestation.",
      compact: true,
    },
    disagreeing: disagreement(lakes, assumed),
    leftOut: `Infested lakes that are left out, since no source of their water was read: ${leftOut.join("; ")}.`,
  };
}

function lakeRow(lake: InfestedLake, assumed: Assumed): RowView {
  const sources = [...new Set([lake.waterSource, lake.infestedSource])].map((key) => `[${key}]`).join(" ");
  return row(lake.name, lake.species, waterText(lake, assumed), ...found(lake, assumed), sources);
}

function softRow(species: InfestedLake["species"], assumed: Assumed): RowView {
  const known = { species, water: { calcium: softCalcium } };
  return row("any lake", species, waterText(known, assumed), ...found(known, assumed), "–");
}

const waterText = ({ species, water }: Known, assumed: Assumed): string =>
  waterClasses({ species, calciumScheme: "whittier", chemistry: water }, assumed)
    .map(({ variable, value, unit }) => `${variable} ${significant(value, 4)} ${unit}`.trim())
    .join(", ");

function found(known: Known, assumed: Assumed) {
  const { variable, class: name, weight } = limitingIn(known, assumed);
  return [variable, name, num(significant(weight, 2))] as const;
}

/** Nothing is tuned to make them agree. */
function disagreement(lakes: readonly InfestedLake[], assumed: Assumed): string {
  const against = lakes
    .map((lake) => ({ lake, limiting: limitingIn(lake, assumed) }))
    .filter(({ limiting }) => !agreeing.has(limiting.class));
  const agreed = `${lakes.length - against.length} of ${lakes.length} infested lakes come out moderate or high.`;
  if (against.length === 0) return agreed;
  const each = against.map(
    ({ lake, limiting: { variable, value, unit, class: name, weight } }) =>
      `${lake.name}, ${name} by ${variable} of ${significant(value, 3)} ${unit} (weight ${significant(weight, 2)})`,
  );
  return `${agreed} Infested, and yet classed below that: ${each.join("; ")}. The classes are left as they are.`;
}
