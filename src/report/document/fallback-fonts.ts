import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { projectRoot } from "../../project-root.js";

const require = createRequire(join(projectRoot, "package.json"));

/** A face for characters that the report's own fonts lack, as the press adds it. */
export interface OtherFace {
  readonly file: string;
  readonly family: string;
  readonly weight: 400 | 600;
  readonly style: "normal" | "italic";
  readonly range: string;
}

interface Family {
  readonly family: string;
  /** Of @fontsource. */
  readonly name: string;
  readonly cuts: ReadonlyArray<readonly [weight: OtherFace["weight"], style: OtherFace["style"]]>;
  /** Its files by their characters, as the package states them. */
  readonly isWanted: (subset: string) => boolean;
  /** Where the package states fewer characters than its one file holds. */
  readonly range?: string;
}

const upright: Family["cuts"] = [
  [400, "normal"],
  [600, "normal"],
];

/** The families that `--serif` and `--sans` name, in tokens.css, beside the faces of its style sheet. */
const families: readonly Family[] = [
  {
    family: "Source Serif 4",
    name: "source-serif-4",
    cuts: [...upright, [400, "italic"]],
    isWanted: (subset) => subset !== "latin" && subset !== "greek",
  },
  { family: "Source Sans 3", name: "source-sans-3", cuts: upright, isWanted: (subset) => subset !== "latin" },
  {
    family: "Noto Sans Arabic",
    name: "noto-sans-arabic",
    cuts: upright,
    isWanted: (subset) => subset === "arabic",
  },
  {
    family: "Noto Sans Hebrew",
    name: "noto-sans-hebrew",
    cuts: upright,
    isWanted: (subset) => subset === "hebrew",
  },
  {
    family: "Noto Sans Math",
    name: "noto-sans-math",
    cuts: [[400, "normal"]],
    isWanted: (subset) => subset === "latin",
    range: "U+2020-2021,U+2032-2038,U+2070-209C,U+2102-2149,U+2190-2300,U+2308-230B,U+25A0-25FF",
  },
  { family: "Noto Emoji", name: "noto-emoji", cuts: upright, isWanted: (subset) => subset.startsWith("[") },
];

interface Described extends OtherFace {
  readonly ranges: ReadonlyArray<readonly [first: number, last: number]>;
}

let described: readonly Described[] | undefined;

/** Characters of the report's own fonts, and such as join or direct others and have no shape. */
const ofOwnFonts =
  /\p{ASCII}|[\u0080-\u00ff\u2009\u2013\u2014\u2018-\u201e\u2022\u2026\u20ac\u2212]|\p{Cf}|\p{Variation_Selector}/u;

/** The faces that a text needs beside the report's own; a bare machine has none that could stand in. */
export function otherFacesFor(text: string): OtherFace[] {
  const points = [...new Set(text)].filter((character) => !ofOwnFonts.test(character)).map(codePoint);
  if (points.length === 0) return [];
  described ??= families.flatMap(facesOf);
  return described.filter(({ ranges }) =>
    points.some((point) => ranges.some(([first, last]) => first <= point && point <= last)),
  );
}

const codePoint = (character: string): number => character.codePointAt(0) ?? 0;

export const faceData = ({ file }: OtherFace): string =>
  `data:font/woff2;base64,${readFileSync(require.resolve(file)).toString("base64")}`;

function facesOf({ family, name, cuts, isWanted, range: own }: Family): Described[] {
  const subsets = require(`@fontsource/${name}/unicode.json`) as Readonly<Record<string, string>>;
  return Object.entries(subsets)
    .filter(([subset]) => isWanted(subset))
    .flatMap(([subset, stated]) => {
      const range = own ?? stated;
      const ranges = range.split(",").map(readRange);
      const part = subset.replace(/[[\]]/g, "");
      return cuts.map(([weight, style]) => ({
        file: `@fontsource/${name}/files/${name}-${part}-${weight}-${style}.woff2`,
        ...{ family, weight, style, range, ranges },
      }));
    });
}

/** `U+4E-5A` or `U+4E` */
function readRange(text: string): readonly [number, number] {
  const [first = "", last = first] = text.replace(/^U\+/i, "").split("-");
  return [Number.parseInt(first, 16), Number.parseInt(last, 16)];
}
