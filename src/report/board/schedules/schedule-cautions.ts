import type { ReportContext } from "../../document/context.js";
import { listedWithin } from "../../words/format.js";

const mostNames = 6;

interface Exposing {
  /** The schedule as it is called in a sentence. */
  readonly name: string;
  readonly inlets: readonly string[];
}

/** What must be settled before a lake is drawn down against mussels. @param exposing schedules that expose an inlet */
export const levelCautions = (exposing: readonly Exposing[]): string[] => [
  "Rate. Draw the lake down no faster than the dam's operating rules and its safety engineer allow: a fast fall can make banks and embankment dams slide.",
  ...exposing.map(
    ({ name, inlets }) =>
      `Exposed under ${name}: ${listedWithin(inlets, mostNames)}. An intake gives no water while it stands above the lake.`,
  ),
  "Intakes. Near the surface they draw air, ice and debris: check submergence, frost and water for fire-fighting first.",
  "Shells. Dead mussels on beaches and ramps are razor-sharp and rot: keep people and animals off until they are swept.",
  "Other life. Native mussels, fish that winter or spawn in the shallows, plants and burrowing animals are exposed too, and some are protected. Stranded fish must be looked for.",
  "Permits. Other levels need the consent of the dam’s regulators and of the authorities for water rights, power, navigation and wildlife. Do not count a saving until it is approved.",
  "Limits. Mussels below the lowest level live on. Drawdown must be repeated every year, and a mild or wet winter kills fewer.",
];

/** Cautions for the other schedules of a study. */
export const scheduleCautions = ({ traced }: Pick<ReportContext, "traced">): string[] =>
  levelCautions(
    traced.schedules
      .slice(1)
      .filter(({ exposedInlets }) => exposedInlets.length > 0)
      .map(({ schedule, exposedInlets }) => ({ name: `“${schedule.name}”`, inlets: exposedInlets })),
  );
