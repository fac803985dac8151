import { counted } from "../../counted.js";
import { at } from "../../lists.js";
import type { ChanceOrigins } from "../../model/risk/chance-origins.js";
import type { ReportContext } from "../document/context.js";
import { percent, significant } from "../words/format.js";
import { head, num, row, type TableView } from "../words/view-types.js";
import { estimatesTable, shapesTable } from "./chance-estimates.js";
import { backtestSentence, lakesTable, regionsTable } from "./chance-evidence.js";
import { type ChanceRuler, chanceOf, chanceRuler, isOnRuler, usedChance } from "./chance-ruler.js";
import { deterrenceSentences } from "./deterrence-words.js";

/** Where the chance of infestation comes from. */
export interface ChanceView {
  /** The finding, over the picture in the board's part. */
  readonly finding: string;
  readonly sentences: readonly string[];
  readonly ruler: ChanceRuler;
  readonly rulerNote: string;
  /** What the two ways come to, which the board's picture leaves to the appendix; empty where the study takes one. */
  readonly together: string;
  readonly launches: TableView;
  readonly ways: TableView;
  /** How little clean years tell; absent where the study enters none. */
  readonly clean: string | undefined;
  /** What the answer would be if mussels that arrive together did better. */
  readonly shapes: TableView;
  readonly estimates: TableView;
  /** How many regions are as the others predict, and which are not. */
  readonly backtest: string;
  readonly evidence: readonly TableView[];
  /** What is left of options that count on boats kept away; none where no option does. */
  readonly deterrence: readonly string[];
  readonly weaknesses: readonly string[];
}

/** Absent where the lake is infested already. */
export function chanceView(context: ReportContext): ChanceView | undefined {
  const { chance } = context.run;
  if (!chance) return undefined;
  const { drivenBy } = context.run.document.boats.chance;
  const counted = context.run.tracedChance();
  const ways = [
    chanceOf("From fouled launches", chance.byLaunches, drivenBy === "launches"),
    chanceOf(`From ${lakesName(context)}`, chance.byLakes, drivenBy === "lakes"),
  ];
  const chances = [...ways, usedChance(chance, "As used, all ways in")];
  const ruler = chanceRuler(chances, context.requested.breakEven.hazard);
  return {
    finding: findingText(context),
    sentences: [sourceSentence(context, chance), differenceSentence(chance), capSentence(chance)].filter(
      (each) => each !== "",
    ),
    ruler,
    rulerNote: `Dot: the middle. Line: the range that holds the yearly chance in four of five cases.${ruler.turn ? " Break-even: at central values." : ""}${isOnRuler(chances) ? "" : " What lies beyond the ruler is drawn at its end, a middle hollow."}`,
    together: drivenBy === "both" ? togetherSentence(chance) : "",
    launches: launchesTable(context, chance),
    ways: waysTable(context, chance),
    clean: cleanSentence(context, chance),
    estimates: estimatesTable(counted),
    backtest: backtestSentence(counted),
    shapes: shapesTable(context, counted),
    evidence: [regionsTable(context, counted), lakesTable(context, counted)],
    deterrence: deterrenceSentences(context, context.comparison.options),
    weaknesses,
  };
}

const lakeNames = {
  open: "lakes without checks",
  busy: "busy lakes without checks",
  inspected: "lakes with checks",
  unknown: "lakes of unknown kind",
} as const;

function lakesName({ run }: ReportContext): string {
  const { ownRate, lakes } = run.document.boats.chance;
  return ownRate ? "the rate entered" : lakeNames[lakes];
}

function sourceSentence(context: ReportContext, chance: ChanceOrigins): string {
  const { drivenBy } = context.run.document.boats.chance;
  const boats = significant(chance.fouledLaunches, 2);
  const launches = `about ${boats} launches a year of boats with mussels on them, dead or alive`;
  switch (drivenBy) {
    case "launches":
      return `The yearly chance rests on ${launches}; the author has left comparable lakes out.`;
    case "lakes":
      return "The yearly chance rests on the rate of comparable lakes alone, by the author’s choice; boats decide only what a program stops.";
    case "both":
      return `Two ways lead to the yearly chance: ${launches}, and what happened at ${lakesName(context)}. The first weighs ${percent(chance.weightOfBoats)}, by how firm each is.`;
  }
}

function togetherSentence({ pooled }: ChanceOrigins): string {
  const { middle, low, high } = chanceOf("", pooled, false);
  return `Both together put the yearly chance at ${percent(middle)} (${percent(low)} to ${percent(high)} in four of five cases), before other ways in and years without a find.`;
}

/** The yearly chance without a program against that at which the answer turns. */
function findingText({ comparison, requested }: ReportContext): string {
  const { hazard } = comparison.baseline;
  const turn = requested.breakEven.hazard;
  const chance = `The yearly chance is ${percent(hazard)} without a program`;
  if (turn === undefined) return `${chance}; no chance changes the answer`;
  return `${chance}; it breaks even at ${percent(turn)}`;
}

/** Apart by more than this, the two ways are told to differ. */
const farApart = 4;

function differenceSentence({
  byLaunches,
  byLakes,
  launchesForLakes,
  fouledLaunches,
}: ChanceOrigins): string {
  if (byLaunches.rate === 0 || launchesForLakes === undefined) {
    return "No class brings fouled boats, so nothing can be founded by boats.";
  }
  const apart = Math.max(byLaunches.rate / byLakes.rate, byLakes.rate / byLaunches.rate);
  if (apart <= farApart) return "";
  return `They differ by ${significant(apart, 2)} times: ${percent(-Math.expm1(-byLakes.rate))} a year needs about ${significant(launchesForLakes, 2)} fouled launches; ${significant(fouledLaunches, 2)} are entered.`;
}

const capSentence = ({ beyondPrograms }: ChanceOrigins): string =>
  beyondPrograms === 0
    ? ""
    : `No boat program can stop ${percent(beyondPrograms)} of it: what comes by other ways caps what any program can do.`;

function launchesTable({ comparison }: ReportContext, { classes }: ChanceOrigins): TableView {
  const funnel = comparison.baseline.arrivals.classes;
  return {
    id: "table-chance-launches",
    caption: "From fouled launches: what each class brings without a program",
    head: head(
      "Class",
      num("Launches a year"),
      num("Fouled launches a year"),
      num("Chance that one founds a population"),
      num("Foundings in 100 years"),
    ),
    rows: classes.map(({ fouled, founding }, index) => {
      const { vesselClass, launches } = at(funnel, index);
      return row(
        vesselClass.name,
        num(significant(launches, 3)),
        num(significant(fouled, 2)),
        num(founding === 0 ? "–" : percent(founding)),
        num(significant(fouled * founding * 100, 2)),
      );
    }),
    compact: true,
    note: "Fouled: with mussels on the boat, dead or alive, as inspectors count. The chance is per fouled launch in suitable water, by how long ago the boats were in infested water; a launch with living mussels has a higher one, which a study may use by entering the share living.",
  };
}

function waysTable({ run }: ReportContext, chance: ChanceOrigins): TableView {
  const { otherWays } = run.document.boats;
  const named = otherWays?.map(({ name, chance: yearly, checked, infestedFrom, becomesInfested, origin }) =>
    row(
      name,
      num(percent(yearly.value)),
      sourceText(infestedFrom, becomesInfested?.text),
      checked ? "yes, as boats" : "no",
      origin,
    ),
  );
  const typical = row(
    "Other ways together, typical share of all foundings",
    num(percent(-Math.expm1(-chance.unchecked))),
    "",
    "no",
    "typical, not yours: assumption arrival.other-share",
  );
  return {
    id: "table-chance-ways",
    caption: "Other ways in",
    head: head("Way", num("Yearly chance"), "Source infested", "Stopped by checks", "Origin"),
    rows:
      named === undefined
        ? [typical]
        : named.length > 0
          ? named
          : [row("None entered", num("0%"), "", "", "")],
    compact: true,
  };
}

function sourceText(from: number | undefined, becomes: string | undefined): string {
  if (from !== undefined) return `from ${from}`;
  return becomes === undefined ? "" : `becomes so, ${becomes}`;
}

function cleanSentence({ run }: ReportContext, { learnedFactor, clean }: ChanceOrigins): string | undefined {
  const years = run.document.boats.cleanPeriods.reduce((sum, { from, to }) => sum + to - from + 1, 0);
  if (years === 0 || !clean) return undefined;
  const { chanceOfClean, infestedUnseen } = clean;
  return `${counted(years, "year")} without a find ${years === 1 ? "lowers" : "lower"} the yearly chance to ${percent(learnedFactor, 3)} of what it was. ${howMuch(chanceOfClean)}: ${percent(chanceOfClean)} of such lakes would have gone that long without a find. Mussels are found years after they came: the chance that they are here and were not seen is ${percent(infestedUnseen)}.`;
}

/** What years without a find say of a rate by which most lakes, or few, would have had none. */
const howMuch = (chanceOfClean: number): string =>
  chanceOfClean > mostLakes ? "They tell little" : "They tell something";

const mostLakes = 0.7;

const weaknesses = [
  "No program has measured how many fouled boats it misses, or how many of those it stops were bound for its own lakes; both are judged, and the chance per launch goes nearly in proportion.",
  "The inspected regions of western North America have seen one or two foundings in all, Switzerland three or four of quagga; the range is wide because the counts are few.",
  "Programs count fouled boats by different rules: one found mussels on 3.3 times as many boats as it counted.",
  "By which way mussels came is not known for any recent founding in the west. Water, plants, docks and gear bring them too.",
  "Finds come one to three years after founding, and more watching makes more finds.",
];
