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
function prepare(datasets: readonly PlainDataset[]): void {
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
  }
}

const key = { dash: 34, between: 12, mostRows: 3 };

interface KeyItem {
  readonly dataset: PlainDataset;
  readonly lines: readonly string[];
  readonly x: number;
  readonly y: number;
}

/** Text in lines that fit, ended at spaces where there are any. */
function linesThat(fits: (text: string) => boolean, text: string): string[] {
  const lines: string[] = [];
  for (let rest = [...text]; rest.length > 0; ) {
    let end = rest.length;
    while (end > 1 && !fits(rest.slice(0, end).join(""))) end -= 1;
    const space = end < rest.length ? rest.slice(0, end + 1).lastIndexOf(" ") : -1;
    if (space > 0) end = space;
    lines.push(rest.slice(0, end).join(""));
    rest = [...rest.slice(end).join("").trimStart()];
  }
  return lines;
}

/**
 * Names of what is drawn, side by side while there is room and in several lines where they are long. The library's own
 * legend has one line for each name and cuts what is longer.
 */
function keyOf(datasets: readonly PlainDataset[], width: number, size: number) {
  const pen = document.createElement("canvas").getContext("2d");
  if (pen) pen.font = `${size}px ${Chart.defaults.font.family}`;
  const widthOf = (text: string) => pen?.measureText(text).width ?? 0;
  const lineHeight = size * 1.3;
  const items: KeyItem[] = [];
  let [x, y, rowHeight] = [0, 0, 0];
  for (const dataset of datasets) {
    if (dataset.hideLegend || !dataset.label) continue;
    const lines = linesThat((text) => key.dash + size + widthOf(text) <= width, dataset.label);
    const itemWidth = key.dash + size + Math.max(...lines.map(widthOf));
    if (x > 0 && x + itemWidth > width) [x, y, rowHeight] = [0, y + rowHeight, 0];
    items.push({ dataset, lines, x, y });
    x += itemWidth + key.between;
    rowHeight = Math.max(rowHeight, lines.length * lineHeight);
  }
  return { items, size, lineHeight, height: Math.ceil(y + rowHeight) };
}

/** Draws a key at the foot of its chart. */
const keyBelow = ({ items, size, lineHeight, height }: ReturnType<typeof keyOf>) => ({
  id: "keyBelow",
  afterDraw({ ctx, height: foot }: ChartClass): void {
    ctx.save();
    ctx.font = `${size}px ${Chart.defaults.font.family}`;
    ctx.textBaseline = "middle";
    ctx.textAlign = "left";
    for (const { dataset, lines, x, y } of items) {
      const middle = foot - height + y + lineHeight / 2;
      ctx.strokeStyle = String(dataset.borderColor);
      ctx.lineWidth = Number(dataset.borderWidth ?? 2);
      ctx.setLineDash("borderDash" in dataset ? ((dataset.borderDash as number[]) ?? []) : []);
      ctx.beginPath();
      ctx.moveTo(x, middle);
      ctx.lineTo(x + key.dash, middle);
      ctx.stroke();
      ctx.fillStyle = String(Chart.defaults.color);
      for (const [line, text] of lines.entries())
        ctx.fillText(text, x + key.dash + size / 2, middle + line * lineHeight);
    }
    ctx.restore();
  },
});

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
      ctx.fillStyle = String(Chart.defaults.color);
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
  const datasets = config.data.datasets as PlainDataset[];
  prepare(datasets);
  const width = Number(place.dataset.width);
  const drawnKey = keyOf(datasets, width, width < 500 ? 11 : 12);
  // A key of more rows than usual makes its chart higher.
  const higher = Math.max(0, drawnKey.height - key.mostRows * drawnKey.lineHeight);
  const size = { width, height: Number(place.dataset.height) + higher };
  const canvas = new svgcanvas.Element(size);
  const chart = new Chart(canvas as unknown as HTMLCanvasElement, {
    ...config,
    plugins: [pointNotes, keyBelow(drawnKey)],
    platform: Chart.platforms.BasicPlatform,
    options: {
      ...config.options,
      animation: false,
      responsive: false,
      devicePixelRatio: 1,
      events: [],
      layout: { padding: { bottom: drawnKey.height + 4 } },
      plugins: { ...config.options.plugins, legend: { display: false } },
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
