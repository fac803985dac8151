import { at } from "../../lists.js";
import { daysOf, hoursPerDay, months } from "../../model/lake/calendar.js";
import { waterTemperature } from "../../model/lake/temperature.js";
import type { GrowingSurface } from "../../model/mussels/growing-surfaces.js";
import type { Layer } from "../../model/mussels/layer.js";
import { depthOf } from "../../model/mussels/surface.js";
import type { Component, Plan } from "../../model/structures/component.js";
import type { LakeContext } from "../../model/structures/context.js";
import { courseOf } from "../../model/structures/plans/course.js";
import { isCleaned, layerIn as layerOf, yearLike } from "../../model/structures/plans/course-months.js";
import { settlersLetOn, untouchedCourse } from "../../model/structures/plans/untouched.js";
import { componentsOf, type StructureResult } from "../../model/structures/structure.js";
import { monthName } from "../../report/words/month-name.js";
import type { Setting } from "../worked/setting.js";
import type { Shown } from "./line.js";
import type { PathSheet } from "./path.js";

/** A part under its chosen plan, month by month since establishment. */
export interface PartCourse {
  readonly component: Component;
  readonly plan: Plan;
  readonly surface: GrowingSurface;
  readonly context: LakeContext;
  readonly layerIn: (month: number) => Layer;
  /** In the list that is grown, after which years repeat. */
  readonly cleaned: readonly number[];
}

export function partCourse(
  { structure, components }: StructureResult,
  name: string,
  { lake: context }: Setting,
): PartCourse | undefined {
  const plan = components.find((each) => each.name === name)?.chosen.plan;
  const component = componentsOf(structure, context).find((each) => each.name === name);
  if (!plan || !component) return undefined;
  const surface = context.growing(component.surface);
  const part = { component, context, surface };
  const course = courseOf(plan, untouchedCourse(settlersLetOn(plan, context), part), part);
  const layerIn = (month: number) =>
    layerOf(course, yearLike(course, Math.floor(month / 12)) * 12 + (month % 12));
  const told = Array.from({ length: course.months }, (_, month) => month);
  const cleaned = told.filter((month) => isCleaned(course, month));
  return { component, plan, surface, context, layerIn, cleaned };
}

/** The twelve months of the surface: what runs along it, how deep and how warm it is, what settles and grows. */
export function conditionsTable(
  sheet: PathSheet,
  { component: { surface }, surface: grown, context }: PartCourse,
  flow?: readonly number[],
): void {
  const depth = (month: number) => depthOf(surface.place, at(context.monthlyLevels, month));
  const { running } = surface;
  sheet.table(
    "Conditions by month",
    [
      "Month",
      ...(flow ? ["Flow Q, m³/s"] : []),
      ...(running ? ["Hours running"] : []),
      "Velocity V, m/s",
      "Depth y, m",
      "Water T, °C",
      "Share of settlers s",
      "Degree-days DD",
    ],
    months.map((month) => [
      monthName(month),
      ...(flow ? [at(flow, month)] : []),
      ...(running ? [at(running, month) * daysOf(month) * hoursPerDay] : []),
      at(surface.velocity, month),
      depth(month),
      waterTemperature(context.lake, month, depth(month)),
      at(grown.months, month).settlement,
      at(grown.months, month).degreeDays,
    ]),
  );
}

/** What a path adds to each month of the layer. */
export interface OwnColumn {
  readonly head: string;
  readonly cell: (layer: Layer, month: number) => number;
}

/** The layer at the end of each month that is shown. */
export function layersTable(
  sheet: PathSheet,
  { context, layerIn, cleaned }: PartCourse,
  shown: Shown,
  own: readonly OwnColumn[] = [],
): void {
  const isCleaned = new Set(cleaned);
  const list = Array.from({ length: shown.to - shown.from }, (_, index) => shown.from + index);
  sheet.table(
    "The layer at the end of each month, before any cleaning",
    [
      "Month since establishment",
      "Month",
      "Density D",
      "Number N, 1/m²",
      "Cover c",
      "Mass M, kg/m²",
      ...own.map(({ head }) => head),
      "Then",
    ],
    list.map((month) => {
      const layer = layerIn(month);
      return [
        month + 1,
        monthName(month % 12),
        at(context.density, month),
        layer.number,
        layer.cover,
        layer.mass,
        ...own.map(({ cell }) => cell(layer, month % 12)),
        isCleaned.has(month) ? "made bare" : "",
      ];
    }),
  );
}

/** The area of a bore, by which the table of conditions has its velocities. */
export function boreStep(sheet: PathSheet, area: number): void {
  const name = "Area of the bore, to which the velocity V = Q/B belongs";
  sheet.step({ name, symbol: "B", is: "π D²/4", value: area, unit: "m²" });
}
