import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { colours } from "./palette.js";

const require = createRequire(import.meta.url);

/** Root of the project: two folders up from the compiled file or from the source file. */
export const projectRoot = join(dirname(fileURLToPath(import.meta.url)), "..", "..");
export const viewsFolder = join(projectRoot, "views");
export const assumptionsFolder = join(projectRoot, "assumptions");
export const examplesFolder = join(projectRoot, "src", "examples");

interface Face {
  readonly family: string;
  readonly file: string;
  readonly weight: number;
  readonly style: "normal" | "italic";
  /** Characters that the file holds, where a family comes in several files. */
  readonly range?: string;
}

const serif = (subset: string, weight: 400 | 600, style: Face["style"]): Face => ({
  family: "Source Serif 4",
  file: `@fontsource/source-serif-4/files/source-serif-4-${subset}-${weight}-${style}.woff2`,
  weight,
  style,
  ...(subset === "greek" ? { range: "U+0370-03FF" } : {}),
});

const sans = (weight: 400 | 600): Face => ({
  family: "Source Sans 3",
  file: `@fontsource/source-sans-3/files/source-sans-3-latin-${weight}-normal.woff2`,
  weight,
  style: "normal",
});

const faces: readonly Face[] = [
  serif("latin", 400, "normal"),
  serif("latin", 400, "italic"),
  serif("latin", 600, "normal"),
  serif("greek", 400, "normal"),
  serif("greek", 400, "italic"),
  sans(400),
  sans(600),
];

export interface Assets {
  readonly css: string;
  readonly chartLibrary: string;
  /** Gives the chart library a canvas that writes SVG. */
  readonly svgLibrary: string;
  readonly drawCharts: string;
}

let cached: Assets | undefined;

/** Style sheet with embedded fonts, and the chart scripts: all that a page needs, without a network. */
export function assets(): Assets {
  cached ??= {
    css: [paletteCss(), ...faces.map(faceCss), readFileSync(join(viewsFolder, "style.css"), "utf8")].join(
      "\n",
    ),
    chartLibrary: readFileSync(join(dirname(require.resolve("chart.js")), "chart.umd.js"), "utf8"),
    svgLibrary: asGlobal("svgcanvas", readFileSync(require.resolve("svgcanvas"), "utf8")),
    drawCharts: readFileSync(join(projectRoot, "dist", "report", "browser", "draw-charts.js"), "utf8"),
  };
  return cached;
}

/** A CommonJS file as a plain script that leaves its exports under a global name. */
function asGlobal(name: string, code: string): string {
  return `(function (exports) {${code}\n})((globalThis.${name} = {}));`;
}

function paletteCss(): string {
  const variables = Object.entries(colours).map(([name, value]) => `--${name}: ${value};`);
  return `:root { ${variables.join(" ")} }`;
}

function faceCss({ family, file, weight, style, range }: Face): string {
  const data = readFileSync(require.resolve(file)).toString("base64");
  const characters = range === undefined ? "" : ` unicode-range: ${range};`;
  return `@font-face { font-family: "${family}"; font-weight: ${weight}; font-style: ${style};${characters} src: url(data:font/woff2;base64,${data}) format("woff2"); }`;
}
