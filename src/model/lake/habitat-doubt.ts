import type { Assumed } from "../assumed.js";
import type { RegisteredId } from "../register/register.js";
import type { ByMonth } from "./calendar.js";
import type { Lake } from "./lake.js";
import { suitability, type VariableClass, type VariableKey } from "./suitability.js";

/** A variable of which a measurement by its error lower or higher falls in another class. */
export interface NearEdge {
  readonly variable: VariableClass;
  readonly other: VariableClass;
  /** Share of the value, or in its unit: see `isShare`. */
  readonly error: number;
  readonly isShare: boolean;
}

/** How firmly a lake's habitat is known. */
export interface HabitatDoubt {
  /** Set where one variable alone decides: the lowest weight of the others. */
  readonly weightOtherwise: number | undefined;
  readonly nearEdges: readonly NearEdge[];
}

interface MeasuringError {
  readonly id: RegisteredId;
  readonly isShare: boolean;
}

const measuringErrors: Readonly<Record<VariableKey, MeasuringError>> = {
  calcium: { id: "suitability.error.calcium", isShare: true },
  ph: { id: "suitability.error.ph", isShare: false },
  alkalinity: { id: "suitability.error.alkalinity", isShare: true },
  hardness: { id: "suitability.error.hardness", isShare: true },
  oxygen: { id: "suitability.error.oxygen", isShare: false },
  conductivity: { id: "suitability.error.conductivity", isShare: true },
  salinity: { id: "suitability.error.salinity", isShare: true },
  temperature: { id: "suitability.error.temperature", isShare: false },
};

/** Which variable decides alone, and which lie within their measuring error of the edge of a class. */
export function habitatDoubt(lake: Lake, assumed: Assumed): HabitatDoubt {
  const { variables, limiting } = suitability(lake, assumed);
  const others = variables.filter((each) => each !== limiting).map(({ weight }) => weight);
  const otherwise = Math.min(...others);
  return {
    weightOtherwise: otherwise > limiting.weight ? otherwise : undefined,
    nearEdges: variables.flatMap((variable) => nearEdge(variable, lake, assumed)),
  };
}

function nearEdge(variable: VariableClass, lake: Lake, assumed: Assumed): NearEdge[] {
  const { id, isShare } = measuringErrors[variable.key];
  const error = assumed(id);
  const moved = [-error, error].flatMap((by) =>
    suitability(measuredAnew(lake, variable, isShare ? variable.value * by : by), assumed).variables.filter(
      ({ key, class: name }) => key === variable.key && name !== variable.class,
    ),
  );
  return moved.slice(0, 1).map((other) => ({ variable, other, error, isShare }));
}

/** The lake with one variable measured higher or lower; all months of a temperature are off together. */
function measuredAnew(lake: Lake, { key, value }: VariableClass, by: number): Lake {
  if (key !== "temperature") return { ...lake, chemistry: { ...lake.chemistry, [key]: value + by } };
  return {
    ...lake,
    surfaceTemperature: warmer(lake.surfaceTemperature, by),
    deepTemperature: warmer(lake.deepTemperature, by),
  };
}

const warmer = (temperatures: ByMonth, by: number): ByMonth => temperatures.map((each) => each + by);
