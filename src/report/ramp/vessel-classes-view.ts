import { at } from "../../lists.js";
import type { ClassChance } from "../../model/program/class-chances.js";
import type { BoatsDocument } from "../../study/format/boats-schema.js";
import type { ReportContext } from "../document/context.js";
import { percent, significant } from "../words/format.js";
import { head, num, row, type TableView } from "../words/view-types.js";

type ClassDocument = BoatsDocument["classes"][number];

/** A class with its chance, and launches a year. */
interface ClassLine {
  readonly entered: ClassDocument;
  readonly chance: ClassChance;
  readonly launches: number;
}

interface Column {
  readonly name: string;
  readonly isText?: boolean;
  /** What a class has there; nothing if it does not use the column. */
  readonly read: (line: ClassLine) => string | undefined;
}

const lastWaters = { infested: "infested", clean: "clean", "this-lake": "this lake" };

const columns: readonly Column[] = [
  { name: "Class", isText: true, read: ({ entered }) => entered.name },
  {
    name: "Last water",
    isText: true,
    read: ({ entered }) => entered.lastWater && lastWaters[entered.lastWater],
  },
  { name: "Long moored", isText: true, read: ({ entered }) => yesOrNo(entered.moored) },
  { name: "Residual water", isText: true, read: ({ entered }) => entered.residualWater },
  { name: "Share of launches", read: ({ entered }) => percent(entered.share.value, 3) },
  { name: "Launches a year", read: ({ launches }) => significant(launches, 3) },
  { name: "Fouled, before own seasons", read: priorText },
  { name: "Own seasons", read: ({ chance }) => countsText(chance.seasons) },
  { name: "Fouled, as used (5–95%)", read: ({ chance }) => posteriorText(chance) },
  { name: "Fouled", read: ({ chance }) => percent(chance.fouled, 3) },
  {
    name: "Of these with living mussels",
    read: ({ entered }) => entered.living && percent(entered.living.value),
  },
  {
    name: "Since infested water",
    isText: true,
    read: ({ entered }) => entered.sinceInfestedWater?.text,
  },
];

/** The vessel classes and what is known of each, with only the columns that some class uses. */
export function vesselClassesTable({ run }: ReportContext): TableView {
  const { boats } = run.document;
  const yearly = Object.values(boats.launches).reduce((sum, month) => sum + month.value, 0);
  const lines = boats.classes.map((entered, index) => ({
    entered,
    chance: at(run.chances, index),
    launches: yearly * entered.share.value,
  }));
  const used = columns.filter(({ read }) => lines.some((line) => read(line) !== undefined));
  return {
    id: "table-classes",
    caption: "The boats by class, and how many are fouled",
    head: head(...used.map(({ name, isText }) => (isText ? name : num(name)))),
    rows: lines.map((line) =>
      row(...used.map(({ read, isText }) => (isText ? (read(line) ?? "") : num(read(line) ?? "")))),
    ),
    note: `${noteOf(lines, boats.seasons?.origin)} ${originsText(lines)}`,
  };
}

const yesOrNo = (value: boolean | undefined) => (value === undefined ? undefined : value ? "yes" : "no");

const countsText = (seasons: ClassChance["seasons"]) =>
  seasons && `${significant(seasons.found, 9)} of ${significant(seasons.screened, 9)}`;

function priorText({ chance: { prior, seasons, posterior } }: ClassLine): string | undefined {
  return seasons && posterior && percent(prior);
}

const posteriorText = ({ posterior }: ClassChance) =>
  posterior && `${percent(posterior.mean)} (${percent(posterior.p5)}–${percent(posterior.p95)})`;

/** Each origin once, with the classes that have it. */
function originsText(lines: readonly ClassLine[]): string {
  const names = new Map<string, string[]>();
  for (const { entered } of lines) {
    const origin = originText(entered);
    names.set(origin, [...(names.get(origin) ?? []), entered.name]);
  }
  return `Origins. ${[...names].map(([origin, classes]) => `${classes.join(", ")}: ${origin}.`).join(" ")}`;
}

function originText({ origin, fouled }: ClassDocument): string {
  if (!("found" in fouled)) return origin;
  const { found, of, weight } = fouled;
  return `${origin}; fouled ${found} of ${of}, weighing ${percent(weight.value)}: ${fouled.origin}`;
}

function noteOf(lines: readonly ClassLine[], log: string | undefined): string {
  if (lines.every(({ chance }) => chance.posterior === undefined))
    return "Shares as entered. Fouled: with mussels, dead or alive.";
  const source = log === undefined ? "" : ` Own seasons, fouled of screened: ${log}.`;
  return `Fouled: found with mussels, alive or dead.${source} By the beta–binomial, with boats taken as independent. Boats that the checks miss are not counted, so the true share is higher.`;
}
