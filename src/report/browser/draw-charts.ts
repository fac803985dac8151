import type { Chart as ChartClass, ChartConfiguration, ChartDataset } from "chart.js";

/** The chart library and the canvas that writes SVG, loaded by the page before this script. */
declare const Chart: typeof ChartClass & { platforms: { BasicPlatform: ChartConfiguration["platform"] } };
declare const svgcanvas: { Element: new (size: { width: number; height: number }) => SvgCanvas };

interface SvgCanvas {
  getContext(kind: "2d"): { getSvg(): SVGElement };
}

type PlainDataset = ChartDataset<"line" | "bar"> & {
  hatch?: string;
  hideLegend?: boolean;
  /** Words beside the first point, so many pixels off it. */
  note?: { text: string; right: number; up: number };
};
type PlainConfig = ChartConfiguration<"line" | "bar"> & { options: { monthTicks?: boolean } };

function readConfig(place: HTMLElement): PlainConfig {
  const element = document.getElementById(`${place.id}-data`);
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

/** Marks that a data set asks for: hatch, so that the rack side is told in grey print; lines as plain strokes. */
function prepare(datasets: readonly PlainDataset[]): Set<string> {
  const hidden = new Set<string>();
  for (const dataset of datasets) {
    if (dataset.hatch) {
      Object.assign(dataset, {
        backgroundColor: "url(#hatch)",
        borderColor: dataset.hatch,
        borderWidth: 1.2,
      });
    }
    // With a segment option the library strokes lines itself instead of handing over cached paths.
    Object.assign(dataset, { segment: {} });
    if (dataset.hideLegend && dataset.label) hidden.add(dataset.label);
  }
  return hidden;
}

/** Writes the notes that data sets carry, on a ground of paper so that lines behind them do not cross the words. */
const pointNotes = {
  id: "pointNotes",
  afterDatasetsDraw(chart: ChartClass): void {
    const { ctx } = chart;
    (chart.data.datasets as PlainDataset[]).forEach(({ note }, index) => {
      const point = chart.getDatasetMeta(index).data[0];
      if (!note || !point) return;
      const { x, y } = point.getProps(["x", "y"]);
      ctx.save();
      ctx.font = `600 12px ${Chart.defaults.font.family}`;
      ctx.lineWidth = 6;
      ctx.lineJoin = "round";
      ctx.strokeStyle = "#fff";
      ctx.fillStyle = String(Chart.defaults.color);
      ctx.strokeText(note.text, x + note.right, y - note.up);
      ctx.fillText(note.text, x + note.right, y - note.up);
      ctx.restore();
    });
  },
};

/** Draws a chart as SVG, so that it is sharp at any size, and puts it in its place. */
function draw(place: HTMLElement): void {
  const config = readConfig(place);
  if (config.options.monthTicks) {
    const x = config.options.scales?.x;
    if (x) Object.assign(x, { ticks: monthTicks(config.data.labels ?? []), grid: { display: false } });
  }
  const hidden = prepare(config.data.datasets as PlainDataset[]);
  const size = { width: Number(place.dataset.width), height: Number(place.dataset.height) };
  const canvas = new svgcanvas.Element(size);
  const chart = new Chart(canvas as unknown as HTMLCanvasElement, {
    ...config,
    plugins: [pointNotes],
    platform: Chart.platforms.BasicPlatform,
    options: {
      ...config.options,
      animation: false,
      responsive: false,
      devicePixelRatio: 1,
      events: [],
      plugins: {
        ...config.options.plugins,
        legend: {
          position: "bottom",
          ...config.options.plugins?.legend,
          labels: {
            boxWidth: 34,
            boxHeight: 0,
            filter: (item) => !hidden.has(item.text),
            ...config.options.plugins?.legend?.labels,
          },
        },
      },
    },
  });
  const svg = canvas.getContext("2d").getSvg().cloneNode(true) as SVGElement;
  chart.destroy();
  svg.setAttribute("viewBox", `0 0 ${size.width} ${size.height}`);
  // The browser tags what a picture draws by the SVG's own role: in an element that is a picture itself it tags nothing.
  for (const name of ["role", "aria-label"]) {
    svg.setAttribute(name, place.getAttribute(name) ?? svg.getAttribute(name) ?? "");
    place.removeAttribute(name);
  }
  // The library writes numbers on axes with a hyphen.
  for (const text of svg.querySelectorAll("text"))
    text.textContent = text.textContent.replace(/^-(?=\d)/, "−");
  place.replaceChildren(svg);
}

function setDefaults(): void {
  Chart.defaults.font.family = getComputedStyle(document.documentElement).getPropertyValue("--sans");
  Chart.defaults.font.size = 12;
  Chart.defaults.color = "#1d2b33";
  Chart.defaults.locale = "en-US";
}

function drawAll(): void {
  for (const place of document.querySelectorAll<HTMLElement>("[data-chart]")) draw(place);
}

setDefaults();
Object.assign(globalThis, { drawAll });
await document.fonts.ready;
drawAll();
