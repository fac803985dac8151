import { counted } from "../../counted.js";
import { at } from "../../lists.js";
import type { ReportContext } from "../document/context.js";
import { structureCosts } from "../rack/infestation-view.js";
import { percent } from "../words/format.js";
import type { BoardCase, BoardView } from "./board.js";
import { boardName } from "./motion.js";
import { scheduleBoard } from "./schedules/schedule-board.js";

/** Page 1 for a lake that is infested already: a maintenance budget, with nothing to weigh and nothing to avoid. */
export function infestedBoard(context: ReportContext, since: number): BoardCase {
  const { run, comparison, format, requested } = context;
  if (requested.result.option.schedule !== undefined) return scheduleBoard(context);
  const { lake, study } = run.document;
  const yearly = format.money(comparison.baseline.equivalentYearly.infestation);
  return {
    question: `${lake.name} has been infested since ${since}: what does keeping its structures in service cost ${study.authority}?`,
    answer: `Keeping the structures in service costs about ${yearly} a year at central values. This is a maintenance budget: no inspection program can avoid an infestation that is there.${lowerLevelsText(context)}`,
    pays: false,
    balance: undefined,
    figures: figures(context),
    findings: [],
    asked: `The ${boardName(study)} is asked to take note of the yearly cost and to decide on the protection plans listed inside.`,
    changes: [
      "The price of cleaning and the limits of each part decide the plans; the table of parts names the runner-up of each.",
      "The lake's levels decide what is exposed; a longer exposed period kills more and leaves more to sweep.",
      "First replace unit prices marked as judged with your own.",
    ],
  };
}

/** Points to an option whose levels of the lake lower the yearly cost. */
function lowerLevelsText({ comparison }: ReportContext): string {
  const paying = comparison.options.find(
    ({ result, netBenefit }) => result.option.schedule !== undefined && netBenefit.greaterThan(0),
  );
  return paying
    ? ` Following “${paying.result.schedule.name}” would lower it by more than it costs: see “Other levels of the lake”.`
    : "";
}

function figures(context: ReportContext): BoardView["figures"] {
  const { comparison, requested, format, horizon, run } = context;
  const { baseline, infestation } = comparison;
  const costs = structureCosts(context);
  const total = baseline.presentValue.infestation;
  const largest = costs[0];
  return [
    {
      label: "Upkeep and losses",
      value: format.money(baseline.equivalentYearly.infestation),
      note: `a year, annual equivalent over ${counted(horizon, "year")}`,
    },
    {
      label: `In ${run.document.money.startYear}`,
      value: format.money(at(infestation.byYear, 0)),
      note: "the first year of this budget",
    },
    { label: "Present value", value: format.money(total), note: `over ${counted(horizon, "year")}` },
    {
      label: "Largest part",
      value: largest && total.greaterThan(0) ? percent(largest.expected.dividedBy(total).toNumber()) : "none",
      note: largest ? `of the present value: ${largest.name}` : "",
    },
    {
      label: "Program still run, per year",
      value: format.money(requested.result.equivalentYearly.program),
      note: `“${requested.result.option.name}” at its share once infested`,
    },
  ];
}
