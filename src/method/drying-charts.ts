import { counted } from "../counted.js";
import { type Air, type DryingParameters, frostKillHours } from "../model/mussels/drying.js";
import { axis, safeJson } from "../report/print/chart-parts.js";
import { percent } from "../report/words/format.js";
import { colours } from "../report/words/palette.js";
import type { ChartView } from "../report/words/view-types.js";
import { aliveAfter, type DryingModel, daysToDeath, deadShare } from "./drying-fit.js";
import {
  aliveAfterTenDays,
  frostTable,
  large,
  livesInWarmAir,
  type SizeClass,
  small,
} from "./drying-points.js";

interface Point {
  readonly x: number;
  readonly y: number;
}

const curveSteps = 80;

const curve = (label: string, data: readonly Point[], colour: string, dash: readonly number[]) => ({
  label,
  data,
  borderColor: colour,
  borderDash: dash,
  borderWidth: 2,
  pointRadius: 0,
});

/** A published result: a point, or a bar from its first point, with its words beside it. */
const mark = (text: string, data: readonly Point[], pointStyle: "circle" | "triangle", up: number) => ({
  label: text,
  note: { text, right: 8, up },
  hideLegend: true,
  clip: 8,
  data,
  borderColor: colours.water,
  backgroundColor: colours.water,
  borderWidth: 3,
  pointRadius: data.map((_, index) => (index === 0 ? 5 : 0)),
  pointStyle,
});

/** Alive share over time for both size classes, of zebra and, where the study has it, of quagga. */
function survivalCurves({ zebra, quagga }: DryingModel, air: Air, lastHour: number) {
  const along = (size: SizeClass, parameters: DryingParameters) =>
    Array.from({ length: curveSteps + 1 }, (_, step): Point => {
      const x = (lastHour * step) / curveSteps;
      return { x, y: Number((100 * aliveAfter(x, air, size, parameters)).toFixed(2)) };
    });
  const pair = (name: string, parameters: DryingParameters, colour: string, dashes: readonly number[][]) =>
    [large, small].map((size, index) =>
      curve(
        `${name}, ${size.name} (${size.lengthMm} mm)`,
        along(size, parameters),
        colour,
        dashes[index] ?? [],
      ),
    );
  return [
    ...pair("zebra", zebra, colours.ink, [[], [8, 4]]),
    ...(quagga
      ? pair("quagga", quagga, colours.shell, [
          [2, 3],
          [10, 3, 2, 3],
        ])
      : []),
  ];
}

function survivalScales(lastHour: number) {
  return {
    x: axis("Hours in air", {
      type: "linear",
      min: 0,
      max: lastHour,
      ticks: { stepSize: 24, color: colours.ink },
    }),
    y: axis("Alive, %", { min: 0, max: 100 }),
  };
}

const coolHours = 384;

export function coolChart(model: DryingModel): ChartView {
  const { air, hours, shares } = aliveAfterTenDays;
  const modelled = shares.map(({ size }) => percent(aliveAfter(hours, air, size, model.zebra)));
  const title = `In cool, damp air the curve leaves ${modelled[0]} of large and ${modelled[1]} of small zebra mussels alive after ten days; published ${percent(shares[0].share)} and ${percent(shares[1].share)}`;
  return {
    id: "chart-drying-cool",
    title,
    alternative: `Line chart of the share alive against hours at ${air.temperature} °C and ${percent(air.humidity)} humidity, with two published points. ${title}.`,
    source: "Curve: the relations of drying at 10 °C and 95% humidity. Points: [ricciardi-1995].",
    height: 225,
    tableId: "table-drying-fit",
    json: safeJson({
      type: "line",
      data: {
        datasets: [
          ...survivalCurves(model, air, coolHours),
          ...shares.map(({ size, share }) =>
            mark(
              `published, ${size.name}: ${percent(share)}`,
              [{ x: hours, y: 100 * share }],
              size === large ? "circle" : "triangle",
              8,
            ),
          ),
        ],
      },
      options: { scales: survivalScales(coolHours) },
    }),
  };
}

const warmHours = 192;

export function warmChart(model: DryingModel): ChartView {
  const { air, lives } = livesInWarmAir;
  const [smallDays, largeDays] = lives.map(({ size }) => daysToDeath(air, size, model.zebra).toFixed(1));
  const title = `In warm, half-dry air the curve has small zebra mussels dead after ${counted(smallDays ?? "", "day")} and large ones after ${largeDays}; published 1 to 3, and beyond 5`;
  return {
    id: "chart-drying-warm",
    title,
    alternative: `Line chart of the share alive against hours at ${air.temperature} °C and ${percent(air.humidity)} humidity, with the published lives as bars. ${title}.`,
    source: `Curve: the relations of drying at 20 °C and 50% humidity. Bars: [ricciardi-1995], drawn at ${percent(deadShare)} alive, which counts as dead.`,
    height: 225,
    tableId: "table-drying-fit",
    json: safeJson({
      type: "line",
      data: {
        datasets: [
          ...survivalCurves(model, air, warmHours),
          ...lives.map(({ size, fromHours, toHours }) =>
            mark(
              toHours ? `published, ${size.name}: 1–3 days` : `published, ${size.name}: beyond 5 days`,
              [fromHours, toHours ?? warmHours].map((x) => ({ x, y: 100 * deadShare })),
              size === large ? "circle" : "triangle",
              toHours ? 8 : 20,
            ),
          ),
        ],
      },
      options: { scales: survivalScales(warmHours) },
    }),
  };
}

const frostStep = 1 / 4;
const hardestFrost = -12;

export function frostChart({ zebra }: DryingModel): ChartView {
  const temperatures = Array.from(
    { length: 1 - hardestFrost / frostStep },
    (_, step) => hardestFrost + step * frostStep,
  );
  const along = (factor: number) =>
    temperatures.map((x): Point => ({ x, y: Number((factor * frostKillHours(x, zebra)).toFixed(3)) }));
  const hoursAt = (temperature: number) => frostKillHours(temperature, zebra).toFixed(0);
  const title = `Frost kills a single mussel in ${counted(hoursAt(0), "hour")} at 0 °C and in ${hoursAt(-10)} at −10 °C; published 48, and under 2`;
  const published = [...frostTable]
    .reverse()
    .flatMap(({ temperature, from, to }) =>
      (from === to ? [to] : [from ?? to, to]).map((hours) => ({ x: temperature, y: hours })),
    );
  return {
    id: "chart-frost",
    title,
    alternative: `Line chart of the hours that kill against air temperature below freezing, for single mussels and clusters, with the published table. ${title}.`,
    source: "Curve: the model, on the table's rows. Points: [payne-1992]; two where a range is given.",
    height: 230,
    tableId: "table-frost-fit",
    json: safeJson({
      type: "line",
      data: {
        datasets: [
          curve("single mussel", along(1), colours.ink, []),
          curve("clusters, as the model takes them", along(zebra.clusterFactor), colours.shell, [8, 4]),
          {
            ...mark("published, single mussel", published, "circle", -18),
            pointRadius: 5,
            showLine: false,
          },
        ],
      },
      options: {
        scales: {
          x: axis("Air, °C", { type: "linear", min: hardestFrost, max: 0 }),
          y: axis("Hours that kill", { type: "logarithmic", min: 1, max: 200 }),
        },
      },
    }),
  };
}
