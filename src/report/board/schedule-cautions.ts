import type { ReportContext } from "../document/context.js";
import { listedWithin } from "../words/format.js";

const mostNames = 6;

/** What must be settled before a lake is drawn down against mussels. */
export function scheduleCautions(context: ReportContext): string[] {
  return [
    "Rate. Draw the lake down no faster than the dam's operating rules and its safety engineer allow: a fast fall can make banks and embankment dams slide.",
    ...exposedIntakes(context),
    "Intakes. Near the surface they draw air, ice and debris: check submergence, frost and water for fire-fighting first.",
    "Shells. Dead mussels on beaches and ramps are razor-sharp and rot: keep people and animals off until they are swept.",
    "Other life. Native mussels, fish that winter or spawn in the shallows, plants and burrowing animals are exposed too, and some are protected. Stranded fish must be looked for.",
    "Permits. Other levels need the consent of the dam's regulators and of the authorities for water rights, power, navigation and wildlife. Do not count a saving until it is approved.",
    "Limits. Mussels below the lowest level live on. Drawdown must be repeated every year, and a mild or wet winter kills fewer.",
  ];
}

const exposedIntakes = ({ traced }: ReportContext): string[] =>
  traced.schedules
    .slice(1)
    .filter(({ exposedInlets }) => exposedInlets.length > 0)
    .map(
      ({ schedule, exposedInlets }) =>
        `Exposed under “${schedule.name}”: ${listedWithin(exposedInlets, mostNames)}. An intake gives no water while it stands above the lake.`,
    );
