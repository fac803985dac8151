import type { OptionResult } from "../../model/option.js";
import type { ReportContext } from "../document/context.js";
import { type Headline, headlineOption, type OptionHeadline } from "../document/headline.js";
import { clearPercent, percent } from "../words/format.js";
import { head, num, row, type TableView } from "../words/view-types.js";

/** More rows than these do not fit the first page; the rest are in the table of all options. */
const mostRanked = 6;

/** Options from the highest net benefit down; that without a program stands at nothing. */
const ranked = ({ options }: Headline): OptionHeadline[] =>
  options.toSorted((one, other) => benefitOf(other) - benefitOf(one));

const benefitOf = ({ balance }: OptionHeadline) => balance?.netBenefit ?? 0;

/** Options in the study's order, as everywhere; absent without odds. */
export function rankedTable(context: ReportContext): TableView | undefined {
  const { headline, format, existing } = context;
  if (!headline) return undefined;
  const shown = shownOf(headline, existing);
  const left = headline.options.length - shown.length;
  return {
    id: "table-ranked",
    caption: "All options, on average",
    head: head("Option", num("Mussels establish"), num("Net benefit"), num("Chance that it pays")),
    rows: shown.map(({ id, name, everInfested, balance }) =>
      row(
        `${name}${markOf(id, headline, existing)}`,
        num(percent(everInfested)),
        num(balance ? format.money(balance.netBenefit) : "–"),
        num(balance ? clearPercent(balance.paysForItself) : "–"),
      ),
    ),
    compact: true,
    ...(left > 0 ? { note: `${left} more in the table of all options.` } : {}),
  };
}

/** The best, and always the one requested, the one in force and the one without a program; in the study's order. */
function shownOf(headline: Headline, existing: OptionResult | undefined): OptionHeadline[] {
  const named = [headline.requested, headline.baseline, existing?.option.id];
  const all = ranked(headline);
  const room = mostRanked - all.filter(({ id }) => named.includes(id)).length;
  const others = all.filter(({ id }) => !named.includes(id)).slice(0, room);
  return headline.options.filter((each) => named.includes(each.id) || others.includes(each));
}

function markOf(id: string, { requested }: Headline, existing: OptionResult | undefined): string {
  const marks = [
    ...(id === requested ? ["requested"] : []),
    ...(id === existing?.option.id ? ["current"] : []),
  ];
  return marks.length === 0 ? "" : ` (${marks.join(", ")})`;
}

/** The cheapest by name, the program in force, and what an option like insurance is: a sentence each. */
export function rankedSentences({ headline, existing }: ReportContext): string[] {
  if (!headline) return [];
  const [best] = ranked(headline);
  return [
    ...(best ? [cheapestText(best, headline)] : []),
    ...(existing && existing.option.id !== headline.requested
      ? [inForceText(headlineOption(headline, existing.option.id))]
      : []),
    ...insuranceText(headlineOption(headline, headline.requested)),
  ];
}

function cheapestText({ id, name }: OptionHeadline, { baseline, requested, options }: Headline): string {
  if (id === requested) return `“${name}”, the option requested, costs least, program and damage together.`;
  const rest = options.length === 2 ? "the other option costs" : "every other option costs";
  return id === baseline
    ? `“${name}” costs least, program and damage together: ${rest} more than it saves on average.`
    : `“${name}” costs least, program and damage together.`;
}

function inForceText({ name, balance }: OptionHeadline): string {
  const verb = (balance?.netBenefit ?? 0) > 0 ? "pays" : "costs more than it saves";
  return `The current program, “${name}”, ${verb} on average.`;
}

/** An option that pays on average and loses in most outcomes. */
function insuranceText({ name, balance }: OptionHeadline): string[] {
  return balance && balance.netBenefit > 0 && balance.paysForItself < 0.5
    ? [
        `“${name}” is like insurance: it pays on average, yet in most outcomes it costs more than it saves, and in a few it saves much.`,
      ]
    : [];
}
