import { at } from "../../../lists.js";
import { daysOf, hoursPerDay, months } from "../../../model/lake/calendar.js";
import type { Quantity } from "../../../units/quantity.js";
import { monthNames } from "../../format/month-names.js";
import type { StructureDocument } from "../../format/structure-schema.js";
import { type Contradiction, exactlyOne } from "../../reading/contradiction.js";

type PlantDocument = Extract<StructureDocument, { kind: "hydropower" }>;
type ByMonthDocument = NonNullable<PlantDocument["running"]>["flow"];

/** Either a turbine or an efficiency, either a mean flow or how the units run, and neither beyond what can be. */
export function plantProblems(plant: PlantDocument): Contradiction[] {
  const { running } = plant;
  const twice = exactlyOne(plant, "flow", "running");
  if (twice.length > 0) return [...exactlyOne(plant, "efficiency", "turbine"), ...twice];
  return [
    ...exactlyOne(plant, "efficiency", "turbine"),
    ...(running
      ? exactlyOne(running, "hours", "units").map((problem) => ({
          ...problem,
          path: ["running", ...problem.path],
        }))
      : []),
    ...hoursProblems(plant),
    ...unitsProblems(plant),
    ...flowProblems(plant),
  ];
}

interface Entered {
  readonly path: readonly PropertyKey[];
  readonly month: number;
  readonly quantity: Quantity;
}

/** A value for each month, with where it stands. */
function byMonth(values: ByMonthDocument | undefined, at: readonly PropertyKey[]): Entered[] {
  if (!values) return [];
  if ("all" in values) return months.map((month) => ({ path: at, month, quantity: values.all }));
  return monthNames.map((name, month) => ({ path: [...at, name], month, quantity: values[name] }));
}

/** The first month with more hours than it has; one number for all must fit the shortest. */
function hoursProblems({ running }: PlantDocument): Contradiction[] {
  const most = (month: number) => daysOf(month) * hoursPerDay;
  const tooMany = byMonth(running?.hours, ["running", "hours"]).filter(
    ({ quantity, month }) => quantity.value > most(month),
  );
  const least = Math.min(...tooMany.map(({ month }) => most(month)));
  const [first] = tooMany;
  if (!first) return [];
  const isForAll = first.path.length === 2;
  const named = isForAll ? "every month" : at(monthNames, first.month);
  return [
    {
      path: first.path,
      found: first.quantity.text,
      allowed: `at most the hours of ${named}, ${isForAll ? least : most(first.month)} h`,
      remedy: "Correct the hours, or enter them month by month.",
    },
  ];
}

function unitsProblems({ running, units }: PlantDocument): Contradiction[] {
  const tooMany = byMonth(running?.units, ["running", "units"]).find(
    ({ quantity }) => quantity.value > units,
  );
  if (!tooMany) return [];
  return [
    {
      path: tooMany.path,
      found: tooMany.quantity.text,
      allowed: `at most the plant's units, ${units}`,
      remedy: "Correct the units running or the number of units.",
    },
  ];
}

/** Some flow in some month, and no month above the rated flow. */
function flowProblems({ flow, running, turbine }: PlantDocument): Contradiction[] {
  const place = running ? ["running", "flow"] : ["flow"];
  const flows = byMonth(running?.flow ?? flow, place).sort((a, b) => b.quantity.value - a.quantity.value);
  const [largest] = flows;
  if (!largest) return [];
  if (largest.quantity.value === 0) {
    return [
      { path: place, found: "no flow in any month", allowed: "a flow above zero in at least one month" },
    ];
  }
  if (!turbine || largest.quantity.value <= turbine.ratedFlow.value) return [];
  return [
    {
      path: ["turbine", "ratedFlow"],
      found: turbine.ratedFlow.text,
      allowed: `at least the largest flow through one unit, ${largest.quantity.text}`,
      remedy: "Correct the rated flow, the flow or the unit of either.",
    },
  ];
}
