import { counted } from "../../counted.js";
import type { ProgramSearch, TypedPoint } from "../../study/search/result.js";
import { type Formatter, percent } from "../words/format.js";
import { type PlacedLabel, placedLabels } from "./placed-labels.js";

/** Cost a year against chance of infestation for the board: efficient programs on a line, the study's options beside it. */
export interface FrontierPicture {
  readonly title: string;
  readonly alternative: string;
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly base: number;
  readonly tickY: number;
  /** At the ends of the axes, told where there is room for more figures. */
  readonly most: { readonly cost: string; readonly chance: string };
  readonly curve: string;
  readonly programs: ReadonlyArray<{ readonly id: string; readonly x: number; readonly y: number }>;
  readonly marks: ReadonlyArray<{ readonly x: number; readonly y: number; readonly kind: Mark }>;
  readonly labels: readonly PlacedLabel[];
  /** What the marks are, named in full: names of any length wrap here and are none in the picture. */
  readonly named: ReadonlyArray<{ readonly label: string; readonly text: string }>;
  readonly note: string;
}

type Mark = "requested" | "in-force" | "nothing" | "least";

interface Marked {
  readonly kind: Mark;
  readonly name: string | undefined;
  readonly costPerYear: number;
  readonly chance: number;
}

const size = {
  width: 320,
  height: 118,
  left: 4,
  right: 316,
  top: 8,
  base: 100,
  tickY: 112,
} as const;
const words: Readonly<Record<Mark, string>> = {
  requested: "requested",
  "in-force": "in force",
  nothing: "no program",
  least: "least expected cost",
};

export function frontierPicture(
  result: ProgramSearch,
  format: Formatter,
  horizon: number,
): FrontierPicture | undefined {
  const marked = markedOf(result);
  const all = [...result.frontier, ...marked];
  const mostCost = Math.max(...all.map(({ costPerYear }) => costPerYear));
  const mostChance = Math.max(...all.map(({ chance }) => chance));
  if (result.frontier.length === 0 || mostCost <= 0 || mostChance <= 0) return undefined;
  const place = ({ costPerYear, chance }: Pick<Marked, "costPerYear" | "chance">) => ({
    x: rounded(size.left + (Math.max(0, costPerYear) / mostCost) * (size.right - size.left)),
    y: rounded(size.base - (chance / mostChance) * (size.base - size.top)),
  });
  const title = titleOf(result, format);
  const programs = result.frontier.map((point) => ({ id: point.id, ...place(point) }));
  return {
    ...size,
    title,
    most: { cost: format.money(mostCost), chance: percent(mostChance) },
    alternative: `Chance of infestation in ${counted(horizon, "year")} against cost a year. ${marked.map((each) => `${words[each.kind]}: ${figures(each, format)}`).join("; ")}.`,
    curve: programs.map(({ x, y }, index) => `${index === 0 ? "M" : "L"}${x},${y}`).join(""),
    programs,
    marks: marked.map((each) => ({ ...place(each), kind: each.kind })),
    labels: placedLabels(
      marked.map((each) => ({ ...place(each), text: words[each.kind] })),
      size,
    ),
    named: marked.map((each) => ({
      label: words[each.kind],
      text: namedText(each, format),
    })),
    note: "Dots: programs of the search that no other beats on both counts, on average over all that is uncertain. Both scales begin at zero.",
  };
}

const rounded = (value: number) => Number(value.toFixed(1));

const figures = ({ costPerYear, chance }: Marked, format: Formatter) =>
  `${format.money(costPerYear)} a year, ${percent(chance)}`;

/** Page 1 has the chances of the study's options. */
function namedText(each: Marked, format: Formatter): string {
  const { kind, name, costPerYear } = each;
  if (name === undefined) return figures(each, format);
  return kind === "nothing" ? `“${name}”` : `“${name}”, ${format.money(costPerYear)} a year`;
}

function markedOf({ typed, answers }: ProgramSearch): Marked[] {
  const options = typed.flatMap(({ mark, name, costPerYear, chance }: TypedPoint): Marked[] =>
    mark === undefined ? [] : [{ kind: mark, name, costPerYear, chance }],
  );
  const best = answers.find(({ question }) => question === "best")?.point;
  return best
    ? [...options, { kind: "least", name: undefined, costPerYear: best.costPerYear, chance: best.chance }]
    : options;
}

/** For what the chance of the requested option is to be had. */
function titleOf({ typed, answers }: ProgramSearch, format: Formatter): string {
  const requested = typed.find(({ mark }) => mark === "requested");
  const same = answers.find(({ question, isStated }) => question === "under-chance" && !isStated)?.point;
  if (!requested || !same)
    return "What each program of the search costs a year, and the chance that it leaves";
  const less = format.money(requested.costPerYear - same.costPerYear);
  return same.costPerYear < requested.costPerYear * leastShare
    ? `The chance that “${requested.name}” leaves could be had for ${less} a year less`
    : `No program of the search leaves the chance of “${requested.name}” for much less a year`;
}

/** A saving of a smaller share is none. */
const leastShare = 0.99;
