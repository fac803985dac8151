import { at, sumOf } from "../lists.js";
import type { Assumed } from "./assumed.js";
import { costCheck } from "./cost-checks.js";
import type { InfestationCost } from "./infestation-cost.js";
import type { StudyInput } from "./inputs.js";
import { storageBetween } from "./lake/storage.js";
import { trafficChecks } from "./program/traffic-checks.js";
import type { Check, MeasuredCheck } from "./structures/component.js";
import type { StructureResult } from "./structures/structure.js";

/** Rows that hold results against published ranges and against conservation. A failed row goes to page 1. */
export function plausibilityChecks(
  input: StudyInput,
  structures: readonly StructureResult[],
  infestation: InfestationCost,
  assumed: Assumed,
): Array<Check | MeasuredCheck> {
  return [
    ...storageCheck(input, assumed("checks.storage-tolerance")),
    ...(input.boats.traffic ? trafficChecks(input.boats, assumed("checks.traffic-tolerance")) : []),
    ...structures.flatMap((each) => massCheck(each, assumed)),
    ...structures.flatMap((each) => energyCheck(each, assumed)),
    ...structures.flatMap((each) => costCheck(each, infestation, assumed)),
  ];
}

function storageCheck({ lake }: StudyInput, tolerance: number): Check[] {
  const { storageTable } = lake;
  if (storageTable.length < 2) return [];
  const [bottom, top] = [at(storageTable, 0), at(storageTable, storageTable.length - 1)];
  const entered = top.storage - bottom.storage;
  const computed = storageBetween(storageTable, bottom.elevation, top.elevation);
  const difference = Math.abs(computed / entered - 1);
  return [
    {
      what: "Entered storage agrees with the trapezoid rule on the entered areas",
      found: `differs by ${(difference * 100).toFixed(1)} %`,
      allowed: `at most ${tolerance * 100} %`,
      passed: difference <= tolerance,
    },
  ];
}

function massCheck({ structure, components }: StructureResult, assumed: Assumed): Check[] {
  const low = assumed("checks.layer-mass-low");
  const high = assumed("checks.layer-mass-high");
  const heaviest = Math.max(0, ...components.map((each) => each.untouchedLayer.mass));
  if (heaviest < low) return [];
  return [
    {
      what: `${structure.name}: mature layer if nobody cleans`,
      found: `${heaviest.toFixed(1)} kg/m²`,
      allowed: `at most ${high} kg/m² (published: over 12 in heated lakes)`,
      passed: heaviest <= high,
    },
  ];
}

function energyCheck({ structure, years, cleanEnergy }: StructureResult, assumed: Assumed): Check[] {
  if (cleanEnergy.length === 0) return [];
  const high = assumed("checks.energy-lost-high");
  const made = sumOf(cleanEnergy);
  const lost = years.map((lines) =>
    lines.filter((line) => line.quantityKind === "energy").reduce((sum, line) => sum + line.quantity, 0),
  );
  const worst = made > 0 ? Math.max(0, ...lost) / made : 0;
  return [
    {
      what: `${structure.name}: energy lost of the energy made`,
      found: `${(worst * 100).toFixed(2)} % in the worst year`,
      allowed: `at most ${Number((high * 100).toPrecision(3))} %; about 4 % in a published design estimate [inci-alpaslan]`,
      passed: worst <= high,
    },
  ];
}
