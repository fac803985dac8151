import type { Chart as ChartClass, ChartConfiguration, ChartDataset } from "chart.js";

/** The chart library, loaded by the page before this script. */
declare const Chart: typeof ChartClass;

type PlainDataset = ChartDataset<"line" | "bar"> & { hatch?: string; hideLegend?: boolean };
type PlainConfig = ChartConfiguration<"line" | "bar"> & { options: { monthTicks?: boolean } };

/** Resolution of the canvases: four device pixels to a CSS pixel, 384 dots to a printed inch. */
const pixelRatio = 4;
const hatchStep = 7;

/** A diagonal hatch, so that the rack side is told from the ramp side in grey print. */
function hatch(colour: string): CanvasPattern | string {
  const tile = document.createElement("canvas");
  tile.width = hatchStep * pixelRatio;
  tile.height = hatchStep * pixelRatio;
  const context = tile.getContext("2d");
  if (!context) return colour;
  context.fillStyle = colour;
  context.globalAlpha = 0.35;
  context.fillRect(0, 0, tile.width, tile.height);
  context.globalAlpha = 1;
  context.strokeStyle = colour;
  context.lineWidth = 1.6 * pixelRatio;
  context.beginPath();
  for (const shift of [-tile.width, 0, tile.width]) {
    context.moveTo(shift, tile.height);
    context.lineTo(shift + tile.width, 0);
  }
  context.stroke();
  const pattern = context.createPattern(tile, "repeat");
  pattern?.setTransform(new DOMMatrix().scale(1 / pixelRatio));
  return pattern ?? colour;
}

function readConfig(canvas: HTMLCanvasElement): PlainConfig {
  const element = document.getElementById(`${canvas.id}-data`);
  return JSON.parse(element?.textContent ?? "{}") as PlainConfig;
}

/** One tick a month on an axis whose labels repeat the month for each point. */
function monthTicks(labels: readonly unknown[]) {
  const isFirst = (index: number) => index === 0 || labels[index] !== labels[index - 1];
  return {
    autoSkip: false,
    maxRotation: 0,
    callback: (_value: unknown, index: number) => (isFirst(index) ? String(labels[index]) : null),
  };
}

function draw(canvas: HTMLCanvasElement): void {
  const config = readConfig(canvas);
  if (config.options.monthTicks) {
    const x = config.options.scales?.x;
    if (x) Object.assign(x, { ticks: monthTicks(config.data.labels ?? []), grid: { display: false } });
  }
  const hidden = new Set<string>();
  for (const dataset of config.data.datasets as PlainDataset[]) {
    if (dataset.hatch) {
      dataset.backgroundColor = hatch(dataset.hatch);
      dataset.borderColor = dataset.hatch;
      dataset.borderWidth = 1.2;
    }
    if (dataset.hideLegend && dataset.label) hidden.add(dataset.label);
  }
  new Chart(canvas, {
    ...config,
    options: {
      ...config.options,
      animation: false,
      responsive: false,
      devicePixelRatio: pixelRatio,
      events: [],
      plugins: {
        ...config.options.plugins,
        legend: {
          position: "bottom",
          labels: { boxWidth: 34, boxHeight: 0, filter: (item) => !hidden.has(item.text) },
          ...config.options.plugins?.legend,
        },
      },
    },
  });
}

function setDefaults(): void {
  Chart.defaults.font.family = '"Source Sans 3", sans-serif';
  Chart.defaults.font.size = 12;
  Chart.defaults.color = "#1d2b33";
  Chart.defaults.locale = "en-US";
}

async function drawAll(): Promise<void> {
  await document.fonts.ready;
  setDefaults();
  for (const canvas of document.querySelectorAll<HTMLCanvasElement>("canvas[data-chart]")) draw(canvas);
  document.documentElement.dataset.charts = "drawn";
}

await drawAll();
