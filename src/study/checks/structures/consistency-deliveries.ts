import { meanFlows } from "../../../model/structures/deliveries/distribution.js";
import type { StructureDocument } from "../../format/structure-schema.js";
import { withoutUnits } from "../../prepare/to-model.js";
import type { Contradiction } from "../../reading/contradiction.js";

type DocumentOf<Kind extends StructureDocument["kind"]> = Extract<StructureDocument, { kind: Kind }>;
type PumpingDocument = DocumentOf<"pumping-plant">;

const noWater = (field: string, what: string): Contradiction => ({
  path: [field],
  found: `no ${what} in any month`,
  allowed: `${what} above zero in at least one month`,
});

/** What brings a pumping plant's water to the land must be able to. */
export function distributionProblems(plant: PumpingDocument): Contradiction[] {
  if (Object.values(plant.delivered).every(({ value }) => value === 0))
    return [noWater("delivered", "water")];
  return [...canalProblems(plant), ...sprinklerProblems(plant)];
}

function canalProblems({ canal, delivered }: PumpingDocument): Contradiction[] {
  const largest = Math.max(...meanFlows(withoutUnits({ delivered }).delivered));
  if (!canal?.capacity || canal.capacity.value >= largest) return [];
  return [
    {
      path: ["canal", "capacity"],
      found: canal.capacity.text,
      allowed: `at least the mean flow of the month with the largest delivery, ${largest.toFixed(3)} m3/s`,
      remedy: "Correct the capacity, the water delivered or the unit of either.",
    },
  ];
}

/** Sprinklers go with the method, and their nozzles are narrower than the pipe before them. */
function sprinklerProblems(plant: PumpingDocument): Contradiction[] {
  const { method, nozzleBore, laterals, main } = plant;
  if (method === "surface") {
    return (["sprinklerCount", "nozzleBore"] as const).flatMap((field) => {
      const value = plant[field];
      if (value === undefined) return [];
      const found = typeof value === "number" ? String(value) : value.text;
      return [{ path: [field], found, allowed: "no value, since the land is irrigated from the surface" }];
    });
  }
  const { diameter } = laterals ?? main;
  if (!nozzleBore || nozzleBore.value < diameter.value) return [];
  return [
    {
      path: ["nozzleBore"],
      found: nozzleBore.text,
      allowed: `a bore below that of the pipe before the sprinklers, ${diameter.text}`,
    },
  ];
}

/** Water, and head for the line beside the aeration. */
export function hatcheryProblems({
  requiredFlow,
  line,
  aerationHead,
}: DocumentOf<"hatchery">): Contradiction[] {
  if (Object.values(requiredFlow).every(({ value }) => value === 0)) return [noWater("requiredFlow", "flow")];
  if (!aerationHead || aerationHead.value < line.availableHead.value) return [];
  return [
    {
      path: ["aerationHead"],
      found: aerationHead.text,
      allowed: `less than the head available to line and aeration together, ${line.availableHead.text}`,
    },
  ];
}

/** Water, and something that it costs. */
export function treatmentProblems({
  treated,
  tasteAndOdour,
  byProducts,
}: DocumentOf<"treatment-plant">): Contradiction[] {
  if (Object.values(treated).every(({ value }) => value === 0)) return [noWater("treated", "flow")];
  if (tasteAndOdour || byProducts) return [];
  return [
    {
      path: ["tasteAndOdour"],
      found: "neither tasteAndOdour nor byProducts",
      allowed: "at least one of tasteAndOdour and byProducts, with its origin",
      remedy: "Say what mussels are expected to change, or remove the treatment plant.",
    },
  ];
}
