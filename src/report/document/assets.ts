import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { basename, dirname, join } from "node:path";
import { projectRoot } from "../../project-root.js";

const require = createRequire(join(projectRoot, "package.json"));

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
  /** Style of a page that stands by itself: the fonts are in it. */
  readonly css: string;
  /** Style of the server's pages, which fetch the fonts they use. */
  readonly screenCss: string;
  readonly chartLibrary: string;
  /** Gives the chart library a canvas that writes SVG. */
  readonly svgLibrary: string;
  readonly drawCharts: string;
  /** Puts reports on the page of a press. */
  readonly press: string;
  /** Carries sums from page to page. */
  readonly carry: string;
  /** Fills in page numbers, and finds what is wider than a sheet. */
  readonly pages: string;
  /** Takes the charts out of a report one by one. */
  readonly lonePictures: string;
}

let cached: Assets | undefined;

/** Style sheet with embedded fonts, and the chart scripts: all that a page needs, without a network. */
export function assets(): Assets {
  const sheet = (name: string) => readFileSync(join(viewsFolder, name), "utf8");
  const common = [sheet("tokens.css"), sheet("style.css"), sheet("forms.css")];
  cached ??= {
    css: [...faces.map((face) => faceCss(face, embedded(face))), ...common].join("\n"),
    screenCss: [
      ...faces.map((face) => faceCss(face, fontAddress(face))),
      ...common,
      sheet("workbench.css"),
    ].join("\n"),
    chartLibrary: readFileSync(join(dirname(require.resolve("chart.js")), "chart.umd.js"), "utf8"),
    svgLibrary: asGlobal("svgcanvas", withoutStyleText(readFileSync(require.resolve("svgcanvas"), "utf8"))),
    drawCharts: browserScript("draw-charts"),
    press: browserScript("press"),
    carry: browserScript("carry"),
    pages: browserScript("pages"),
    lonePictures: browserScript("lone-pictures"),
  };
  return cached;
}

const browserScript = (name: string) =>
  readFileSync(join(projectRoot, "dist", "report", "browser", `${name}.js`), "utf8");

/** The library reads fonts by a style attribute, which the policy for pages refuses as it would anybody's; by a property it may. */
function withoutStyleText(code: string): string {
  const changed = code.replace(`el.setAttribute("style", 'font:' + this.font)`, "el.style.font = this.font");
  if (changed === code) throw new Error("svgcanvas reads fonts in another way now: see withoutStyleText");
  return changed;
}

/** A CommonJS file as a plain script that leaves its exports under a global name. */
function asGlobal(name: string, code: string): string {
  return `(function (exports) {${code}\n})((globalThis.${name} = {}));`;
}

const embedded = ({ file }: Face) =>
  `data:font/woff2;base64,${readFileSync(require.resolve(file)).toString("base64")}`;

const fontAddress = ({ file }: Face) => `/assets/fonts/${basename(file)}`;

/** Path of a font file by its name, if pages use it. */
export function fontFile(name: string): string | undefined {
  const face = faces.find(({ file }) => basename(file) === name);
  return face && require.resolve(face.file);
}

function faceCss({ family, weight, style, range }: Face, address: string): string {
  const characters = range === undefined ? "" : ` unicode-range: ${range};`;
  return `@font-face { font-family: "${family}"; font-weight: ${weight}; font-style: ${style}; font-display: swap;${characters} src: url(${address}) format("woff2"); }`;
}
