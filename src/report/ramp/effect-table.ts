import { sumOf } from "../../lists.js";
import type { OptionResult } from "../../model/option.js";
import type { ClassFunnel } from "../../model/program/arrivals.js";
import type { TracedOption } from "../../study/traced/traced-option.js";
import type { ReportContext } from "../document/context.js";
import { listedWithin, percent, significant } from "../words/format.js";
import { head, num, row, type TableView } from "../words/view-types.js";

/** Options side by side on the page; the rest are in the appendix. */
const mostBeside = 2;

/** What decides how many fouled boats a program stops, with the boats of a year; absent where no option checks boats. */
export function effectTable(context: ReportContext): TableView | undefined {
  const { infestedSince, run, requested, existing } = context;
  const checking = context.traced.options.filter(({ result }) => result.option.steps !== undefined);
  if (infestedSince !== undefined || checking.length === 0) return undefined;
  const isNamed = ({ result }: TracedOption) => result === requested.result || result === existing;
  const named = checking.filter(isNamed);
  const others = checking.filter((each) => !isNamed(each)).slice(0, Math.max(0, mostBeside - named.length));
  const shown = checking.filter((each) => named.includes(each) || others.includes(each)).slice(0, mostBeside);
  const other = run.chance?.beyondPrograms ?? 0;
  return {
    id: "table-effect",
    caption: "What decides a program’s effect, and what it does with a year of launches",
    head: head("Step", ...shown.flatMap(({ result }) => [num(result.option.name), num("Boats a year")])),
    rows: [
      ...steps
        .filter((step) => shown.some((each) => isTaken(each, step)))
        .map((step) =>
          row(
            step.name,
            ...shown.flatMap(({ result }) => [
              num(shareText(result, step, context)),
              num(step.boats ? boatsText(result, step.boats) : ""),
            ]),
          ),
        ),
      row(
        "Fouled boats stopped, in all",
        ...shown.flatMap((each) => [num(percent(each.shareStopped)), num("")]),
      ),
    ],
    note: `${originsText(shown, context)} ${other === 0 ? "No other way in is counted." : `Other ways in, which no boat program stops: ${percent(other)} of the yearly chance.`} Deterrence counts fouled boats that stay away because they would be checked; no published text gives it a size.${checking.length > shown.length ? " The other options are in the appendix." : ""}`,
    compact: true,
  };
}

/** Where the shares come from: options of one origin together. */
function originsText(shown: readonly TracedOption[], { run }: ReportContext): string {
  const namesOf = new Map<string, string[]>();
  for (const { result } of shown) {
    const steps = run.document.options.find(({ id }) => id === result.option.id)?.steps;
    if (steps) namesOf.set(steps.origin, [...(namesOf.get(steps.origin) ?? []), result.option.name]);
  }
  return [...namesOf].map(([origin, names]) => `${listedWithin(names, names.length)}: ${origin}.`).join(" ");
}

type Read = (each: ClassFunnel) => number;

type Steps = NonNullable<OptionResult["option"]["steps"]>;

/** A step by its key in the study, with its share and what it does with boats. */
const steps: ReadonlyArray<{ name: string; key: string; share?: (steps: Steps) => number; boats?: Read }> = [
  {
    name: "Covered: launches met and checked",
    key: "coverage",
    share: ({ coverage }) => coverage,
    boats: ({ checked }) => checked,
  },
  { name: "Sealed boats that pass at a glance", key: "seals", boats: ({ sealed }) => sealed },
  {
    name: "Owners of risky boats who declare it",
    key: "declaration",
    share: ({ declaration }) => declaration,
  },
  {
    name: "Risky boats that the quick check finds; held for full inspection",
    key: "quickCheck",
    share: ({ quickCheck }) => quickCheck,
    boats: ({ setAsideInAll }) => setAsideInAll,
  },
  { name: "Made safe by the full inspection", key: "inspection", share: ({ inspection }) => inspection },
  {
    name: "Made safe by the hot wash",
    key: "hotWash",
    share: ({ hotWash }) => hotWash,
    boats: ({ washed }) => washed,
  },
  { name: "Held to dry", key: "hold", share: ({ hold }) => hold.share, boats: ({ held }) => held },
  { name: "Turned away", key: "refusal", share: ({ refusal }) => refusal, boats: ({ refused }) => refused },
  { name: "Deterrence: kept away by the checks", key: "deterrence", share: ({ deterrence }) => deterrence },
];

/** Whether an option has a step at all. */
const isTaken = ({ result }: TracedOption, { share, boats }: (typeof steps)[number]): boolean =>
  (share !== undefined && result.option.steps !== undefined && share(result.option.steps) > 0) ||
  (boats !== undefined && sumOf(result.arrivals.classes.map(boats)) > 0);

/** A share as entered, or marked where it is typical. */
function shareText(
  { option }: OptionResult,
  { key, share }: (typeof steps)[number],
  { run }: ReportContext,
): string {
  if (!option.steps || !share) return "";
  if (share(option.steps) === 0) return "none";
  const isTypical = Object.hasOwn(run.document.study.typical ?? {}, `options/${option.id}/steps/${key}`);
  return `${percent(share(option.steps))}${isTypical ? ", typical" : ""}`;
}

function boatsText({ arrivals }: OptionResult, read: Read): string {
  const boats = sumOf(arrivals.classes.map(read));
  return boats === 0 ? "–" : significant(boats, boats < 100 ? 2 : 3);
}
