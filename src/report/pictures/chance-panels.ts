import { counted } from "../../counted.js";
import { at } from "../../lists.js";
import type { StudyDocument } from "../../study/format/schema.js";
import type { Odds, OptionOdds } from "../../study/odds/odds.js";
import { percent } from "../words/format.js";
import { head, num, row, type TableView } from "../words/view-types.js";

/** The chance that mussels have established, by year, a panel for each option on one scale. */
export interface ChancePanels {
  readonly title: string;
  readonly alternative: string;
  readonly width: number;
  readonly height: number;
  readonly base: number;
  readonly yearY: number;
  readonly from: string;
  readonly to: string;
  readonly panels: readonly ChancePanel[];
  readonly note: string;
}

interface ChancePanel {
  readonly name: string;
  readonly curve: string;
  readonly area: string;
  readonly value: string;
  readonly valueY: number;
}

type Years = Pick<StudyDocument["money"], "horizon" | "startYear">;

const width = 150;
const base = 70;
const highest = 16;
const mostPanels = 4;

export function chancePanels(odds: Odds, { horizon, startYear }: Years): ChancePanels {
  const shown = panelsOf(odds);
  const most = Math.max(0.01, ...odds.options.map(({ everInfested }) => everInfested.value));
  const [without, withIt] = [odds.baseline, odds.requested].map((id) =>
    odds.options.find((each) => each.id === id),
  );
  const chance = (option: OptionOdds | undefined) => percent(option?.everInfested.value ?? 0);
  const title = `Within ${counted(horizon, "year")} the chance that mussels establish is ${chance(without)} without a program and ${chance(withIt)} with “${withIt?.name ?? ""}”`;
  const left = odds.options.length - shown.length;
  return {
    title,
    alternative: `Chance that mussels have established by the end of each year. ${shown.map((each) => `${each.name}: ${chance(each)} at the end`).join("; ")}.`,
    width,
    height: base + 14,
    base,
    yearY: base + 11,
    from: String(startYear),
    to: String(startYear + horizon - 1),
    panels: shown.map((option) => panelOf(option, most)),
    note: `On average over all that is uncertain, all panels on one scale. ${left > 0 ? `${counted(left, "more option", "more options")} and the` : "The"} figures by year are in the tables as files, chance-by-year.csv.`,
  };
}

/** The option that does nothing, the one requested, and others in the study's order while there is room. */
function panelsOf({ options, baseline, requested }: Odds): OptionOdds[] {
  const named = (id: string) => id === baseline || id === requested;
  const room = mostPanels - options.filter(({ id }) => named(id)).length;
  const others = options.filter(({ id }) => !named(id)).slice(0, room);
  return options.filter((each) => named(each.id) || others.includes(each));
}

function panelOf({ name, everInfested, establishedBy }: OptionOdds, most: number): ChancePanel {
  const y = (chance: number) => base - (chance / most) * (base - highest);
  const steps = establishedBy.length;
  const points = [0, ...establishedBy].map(
    (chance, year) => `${((year / steps) * width).toFixed(1)},${y(chance).toFixed(1)}`,
  );
  const curve = `M${points.join("L")}`;
  return {
    name,
    curve,
    area: `${curve}L${width},${base}L0,${base}Z`,
    value: percent(everInfested.value),
    valueY: y(everInfested.value) - 4,
  };
}

/** The chances behind the panels. */
export function chanceByYearTable({ options }: Odds, { horizon, startYear }: Years): TableView {
  return {
    id: "table-chance-by-year",
    caption:
      "Chance that mussels have established by the end of each year, on average over all that is uncertain",
    head: head("Year", ...options.map(({ name }) => num(name))),
    rows: Array.from({ length: horizon }, (_, year) =>
      row(
        String(startYear + year),
        ...options.map(({ establishedBy }) => num(percent(at(establishedBy, year), 3))),
      ),
    ),
    compact: true,
  };
}
