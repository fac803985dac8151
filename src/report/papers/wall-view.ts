import type { TracedStructure } from "../../study/traced/traced-structure.js";
import type { ReportContext } from "../document/context.js";
import { listedWithin } from "../words/format.js";
import { head, row, type TableView } from "../words/view-types.js";

/** One page: who does what in the first 72 hours after a suspected find. */
export interface WallView {
  readonly title: string;
  readonly standing: string;
  readonly contacts: TableView;
  readonly steps: readonly { readonly when: string; readonly todo: readonly string[] }[];
  readonly structures: TableView;
  readonly cautions: readonly string[];
}

/** Absent where mussels are known already. */
export function wallView(context: ReportContext): WallView | undefined {
  if (context.infestedSince !== undefined) return undefined;
  const { lake, study } = context.run.document;
  return {
    title: `${lake.name}: the first 72 hours after a suspected find`,
    standing: `${study.authority}, prepared ${study.prepared}${study.invented ? "; invented data, for demonstration" : ""}. The state’s agency for invasive species, the dam’s regulators and the health department are in charge where they have authority; local law and licensed practice come before this sheet.`,
    contacts: contactsTable(context),
    steps: stepsOf(context),
    structures: structuresTable(context),
    cautions: [
      "Nobody samples alone from a boat, on ice or in cold water. Divers near intakes, gates and dams can be drawn in: lock out pumps, gates and units first, under the local diving code.",
      "Nothing is put in the water. What is used against mussels is a pesticide in law and needs a permit and a licensed applicator; drinking-water intakes are told before.",
      "Gates, levels and intakes stay as they are until those in charge of the dam and the water agree: rapid drawdown can make banks slide.",
      "A single larva or a trace of DNA may come from elsewhere: two laboratories agree before anything is announced.",
    ],
  };
}

function contactsTable({ run }: ReportContext): TableView {
  const contacts = run.document.report.found?.contacts ?? [];
  const written = contacts.map(({ name, role, phone, askBefore }) =>
    row(name, role, phone ?? "____________", askBefore ?? ""),
  );
  const blank = ["Agency for invasive species", "Laboratory", "Dam safety", "Health department"].map((role) =>
    row("____________", role, "____________", ""),
  );
  return {
    id: "table-wall-contacts",
    caption: "Who is told, and who is asked first",
    head: head("Name", "What for", "Number", "Ask before"),
    rows: written.length > 0 ? written : blank,
    compact: true,
  };
}

/** What is done by hour, in the study's own names. */
function stepsOf(context: ReportContext): WallView["steps"] {
  const { run, requested } = context;
  const { sites } = run.document.boats;
  const ramps = namesOf(context, ["ramp"]);
  const places = namesOf(context, ["intake", "dock", "ramp"]);
  const stations = (sites ?? []).map(({ name }) => name);
  return [
    {
      when: "Hours 0 to 4",
      todo: [
        "Keep the find: photograph it with a scale, note place, depth, time and finder, keep it wet and cool in a labelled bag.",
        "Call the numbers above, the agency for invasive species first. Tell staff what may be said and by whom.",
        `Leave everything running as it is. Hold boats that leave ${listedWithin(ramps, 4) || "the lake"} for a look, as far as the law allows.`,
      ],
    },
    {
      when: "Hours 4 to 24",
      todo: [
        `Sample again, from the find outward: ${listedWithin(places, 6) || "ramps, docks and intakes"}. Plankton tows, scrapings and plates; clean nets and boats between places.`,
        "Send halves of each sample to two laboratories that the agency accepts.",
        "Walk down the structures below in their order: strainers, small lines and coolers first; keep what is found, with its place.",
      ],
    },
    {
      when: "Hours 24 to 72",
      todo: [
        "Meet the agencies: who leads, what is closed and for how long, what is surveyed, what the public is told.",
        `Exit checks and washing at ${listedWithin(stations.length > 0 ? stations : ramps, 4) || "each ramp"}${requested.result.option.steps ? ` with the staff of “${requested.result.option.name}”` : ""}.`,
        "Order strainer baskets, gaskets and spare tubes; ask for quotes for divers and cleaning. Settle who pays before work is ordered.",
      ],
    },
  ];
}

const namesOf = ({ traced }: ReportContext, kinds: readonly string[]): string[] =>
  traced.structures
    .filter(({ result }) => kinds.includes(result.structure.kind))
    .map(({ result }) => result.structure.name);

const mostStructures = 8;

/** Structures at risk first: those that cost most in the first year, then once mussels are established. */
function structuresTable(context: ReportContext): TableView {
  const atRisk = context.traced.structures
    .filter(({ isBuilt, cost }) => isBuilt && cost.matureMean > 0)
    .toSorted(byFirstYear);
  const { run, bearerName } = context;
  return {
    id: "table-wall-structures",
    caption: "Structures at risk, first those that mussels harm soonest",
    head: head("Structure", "Look at", "Ask before it is shut or dosed"),
    rows: atRisk.slice(0, mostStructures).map(({ kindName, result: { structure, components } }) => {
      const entered = run.document.structures.find(({ id }) => id === structure.id);
      const noOxidant = entered && "oxidantAllowed" in entered && entered.oxidantAllowed === false;
      return row(
        structure.name,
        listedWithin([...new Set(components.map(({ name }) => name))], 5) || kindName,
        `${bearerName(structure.bearer)}${noOxidant ? "; no oxidant by this study" : ""}`,
      );
    }),
    compact: true,
  };
}

/** Those that cost most in the first year of an infestation first; of equals those that do once it is mature. */
export const byFirstYear = (one: TracedStructure, other: TracedStructure): number =>
  Number(other.cost.first.minus(one.cost.first)) || other.cost.matureMean - one.cost.matureMean;
