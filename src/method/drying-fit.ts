import { counted } from "../counted.js";
import {
  type Air,
  type DryingParameters,
  dryDose,
  dryingParameters,
  frostKillHours,
  survival,
} from "../model/mussels/drying.js";
import type { ReportContext } from "../report/document/context.js";
import { percent } from "../report/words/format.js";
import { head, num, row, type TableView } from "../report/words/view-types.js";
import {
  aliveAfterTenDays,
  coldAir,
  frostSource,
  frostTable,
  livesInWarmAir,
  type SizeClass,
} from "./drying-points.js";
import { settingOf } from "./worked/setting.js";

/** Alive share at which a batch is called dead, and the step in which that hour is sought. */
export const deadShare = 1 / 20;
const searchStepHours = 1 / 4;
const mostHours = 1000;
const hoursPerDay = 24;

/** The published mussels are zebra; a study of quagga is shown beside them. */
export interface DryingModel {
  readonly zebra: DryingParameters;
  readonly quagga: DryingParameters | undefined;
}

export function dryingModel(context: ReportContext): DryingModel {
  const { assumed } = settingOf(context, { under: "nothing" });
  return {
    zebra: dryingParameters("zebra", assumed),
    quagga:
      context.comparison.input.lake.species === "quagga" ? dryingParameters("quagga", assumed) : undefined,
  };
}

export function aliveAfter(
  hours: number,
  air: Air,
  { lengthMm }: SizeClass,
  parameters: DryingParameters,
): number {
  return survival(dryDose(hours, air, parameters), lengthMm, parameters);
}

/** Days until no more than the dead share of a size class is alive. */
export function daysToDeath(air: Air, size: SizeClass, parameters: DryingParameters): number {
  let hours = 0;
  while (hours < mostHours && aliveAfter(hours, air, size, parameters) > deadShare) hours += searchStepHours;
  return hours / hoursPerDay;
}

/** A difference of shares in whole points of a hundred. */
function points(difference: number): string {
  const whole = Math.round(100 * difference);
  const sign = whole < 0 ? "−" : "+";
  return `${whole === 0 ? "" : sign}${counted(Math.abs(whole), "point")}`;
}
const days = (value: number) => `${value.toFixed(1)} d`;
const airText = ({ temperature, humidity }: Air) => `${temperature} °C, ${percent(humidity)}`;

interface FitRow {
  readonly what: string;
  readonly size: SizeClass;
  readonly published: string;
  readonly model: (parameters: DryingParameters) => number;
  readonly text: (value: number) => string;
  readonly difference: (value: number) => string;
  readonly source: string;
}

/** Each published point, and how the model compares. */
function fitRows(): FitRow[] {
  const { air, hours, shares, source } = aliveAfterTenDays;
  const share = (size: SizeClass, at: Air, after: number) => (parameters: DryingParameters) =>
    aliveAfter(after, at, size, parameters);
  return [
    ...shares.map(
      ({ size, share: published }): FitRow => ({
        what: `${airText(air)}: alive after ${counted(hours / hoursPerDay, "day")}`,
        size,
        published: percent(published),
        model: share(size, air, hours),
        text: (value) => percent(value),
        difference: (value) => points(value - published),
        source,
      }),
    ),
    ...livesInWarmAir.lives.map(({ size, fromHours, toHours }): FitRow => {
      const bounds = { from: fromHours / hoursPerDay, to: toHours && toHours / hoursPerDay };
      return {
        what: `${airText(livesInWarmAir.air)}: days until ${percent(deadShare)} are alive`,
        size,
        published: bounds.to ? `${bounds.from}–${bounds.to} d` : `over ${bounds.from} d`,
        model: (parameters) => daysToDeath(livesInWarmAir.air, size, parameters),
        text: days,
        difference: (value) => outside(value, bounds.from, bounds.to, days),
        source: livesInWarmAir.source,
      };
    }),
    {
      what: `${airText(coldAir.air)}: alive after ${counted(coldAir.hours, "hour")}`,
      size: coldAir.size,
      published: "nearly all",
      model: share(coldAir.size, coldAir.air, coldAir.hours),
      text: (value) => percent(value),
      difference: () => "–",
      source: coldAir.source,
    },
  ];
}

/** How far a value lies outside a published range. */
function outside(
  value: number,
  from: number,
  to: number | undefined,
  text: (value: number) => string,
): string {
  const rounded = Number(value.toFixed(1));
  if (rounded < from) return `−${text(from - value)}`;
  return to !== undefined && rounded > to ? `+${text(value - to)}` : "within";
}

export function dryingTable({ zebra, quagga }: DryingModel): TableView {
  return {
    id: "table-drying-fit",
    caption: "Drying: the fitted curve against the published points",
    head: head(
      "Air and measure",
      "Shells",
      num("Published"),
      num("Model, zebra"),
      num("Difference"),
      ...(quagga ? [num("Model, quagga")] : []),
      "Source",
    ),
    rows: fitRows().map(({ what, size, published, model, text, difference, source }) =>
      row(
        what,
        `${size.name}, ${size.lengthMm} mm`,
        num(published),
        num(text(model(zebra))),
        num(difference(model(zebra))),
        ...(quagga ? [num(text(model(quagga)))] : []),
        `[${source}]`,
      ),
    ),
    note: `Small is ${aliveAfterTenDays.shares[1].size.range}, large ${aliveAfterTenDays.shares[0].size.range}; the middle of each is taken. The first four rows were used to fit the curve by hand. The source of the last gives no humidity; damp air is taken.${quagga ? " The published mussels are zebra; quagga dries faster by the factor of its assumption." : ""}`,
  };
}

export function frostFitTable({ zebra }: DryingModel): TableView {
  return {
    id: "table-frost-fit",
    caption: "Frost: hours that kill, against the published table",
    head: head(
      num("Air, °C"),
      num("Published, h"),
      num("Model, single mussel, h"),
      num("Difference, h"),
      num("Model, clusters, h"),
    ),
    rows: frostTable.map(({ temperature, from, to }) => {
      const hours = frostKillHours(temperature, zebra);
      return row(
        num(String(temperature).replace("-", "−")),
        num(publishedHours(from, to)),
        num(hours.toFixed(0)),
        num(
          hours === to && from === undefined
            ? "at the bound"
            : outside(hours, from ?? 0, to, (value) => value.toFixed(0)),
        ),
        num((hours * zebra.clusterFactor).toFixed(0)),
      );
    }),
    note: `Published values: [${frostSource}], single mussels. The model reads the table between its rows and gives clusters a longer time; both species alike.`,
  };
}

function publishedHours(from: number | undefined, to: number): string {
  if (from === undefined) return `under ${to}`;
  return from === to ? String(to) : `${from}–${to}`;
}
