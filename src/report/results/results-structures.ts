import type { ComponentResult, TriedPlan } from "../../model/structures/component.js";
import type { TracedSchedule } from "../../study/levels/traced-schedule.js";
import type { TracedStructure } from "../../study/traced/traced-structure.js";
import { lineJson, text } from "./results-line.js";

/** A structure with its parts, every plan tried on them, and the lines of each year. */
export function structureJson({ result, unitCosts }: TracedStructure): object {
  const { structure, components, years, litter } = result;
  return {
    id: structure.id,
    name: structure.name,
    kind: structure.kind,
    bearer: structure.bearer,
    components: components.map(componentJson),
    litter,
    unitCosts,
    years: years.map((lines) => lines.map(lineJson)),
  };
}

function componentJson(component: ComponentResult): object {
  const { name, chosen, pinned, impossible, untouchedLayer, thickestLayer } = component;
  return {
    name,
    plan: chosen.plan.label,
    brokenLimit: chosen.brokenLimit ?? null,
    nearestLimit: limitJson(chosen.nearestLimit),
    wayOut: chosen.wayOut ?? null,
    pinned: pinned ? { reason: pinned.reason, cheapest: triedJson(pinned.cheapest) } : null,
    untouchedLayer,
    thickestLayer,
    tried: component.everyPlan().map(triedJson),
    impossible,
  };
}

/** A limit that leaves no room at all is passed by any layer: its load is beyond every number, which JSON has not. */
const limitJson = (nearest: TriedPlan["nearestLimit"]): object | null =>
  nearest ? { ...nearest, load: Number.isFinite(nearest.load) ? nearest.load : null } : null;

function triedJson({ plan, yearlyCost, brokenLimit, nearestLimit, wayOut }: TriedPlan): object {
  return {
    id: plan.id,
    plan: plan.label,
    yearlyCost: Number(yearlyCost.toFixed(2)),
    brokenLimit: brokenLimit ?? null,
    nearestLimit: limitJson(nearestLimit),
    wayOut: wayOut ?? null,
  };
}

/** The lake under one schedule; the lake's own levels have no id. */
export function scheduleJson({ schedule, operatingPerYear }: TracedSchedule): object {
  const { id, name, levels, structures, infestation, operating } = schedule;
  return {
    id: id ?? null,
    name,
    levels: {
      lowest: levels.band.lowest,
      highest: levels.band.highest,
      exposedArea: levels.exposedArea,
      storageInBand: levels.storageInBand,
      daily: levels.daily,
      years: levels.years,
    },
    storageGivenUp: schedule.storageGivenUp,
    cleanEnergy: schedule.cleanEnergy,
    killed: schedule.killed(),
    litter: schedule.litter,
    operating: operating.map(lineJson),
    operatingPerYear: text(operatingPerYear),
    infestationByYear: infestation.byYear.map(text),
    plans: structures.map(({ structure, components }) => ({
      structure: structure.id,
      parts: components.map(({ name: part, chosen }) => ({ part, ...triedJson(chosen) })),
    })),
  };
}
