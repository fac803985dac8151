import { hydrologicYearId } from "../../study/odds/odds.js";
import type { NamedInput } from "../../study/odds/uncertain-inputs.js";
import type { ReportContext } from "../document/context.js";
import { head, num, row, type TableView } from "../words/view-types.js";

type Kind = NamedInput["distribution"]["kind"];

const distributionNames: Record<Kind, string> = {
  pert: "beta-PERT",
  triangular: "triangular",
  uniform: "uniform",
  lognormal: "lognormal",
  "truncated-normal": "normal, cut at three deviations",
  beta: "beta, from counts",
  discrete: "by stated shares",
  fixed: "fixed",
};

/** How many inputs of each kind are drawn, and by which distributions. */
export function distributionsTable(context: ReportContext): TableView {
  const inputs = context.traced.drawn();
  const typed = new Set(context.run.typed().map(({ id }) => id));
  const kinds = grouped(inputs, (input) => kindOf(input, context, typed));
  return {
    id: "table-distributions",
    caption: "What varies, and how",
    head: head("What varies", num("Inputs"), "Distributions"),
    rows: kinds.map(([kind, members]) => row(kind, num(String(members.length)), distributionsText(members))),
    total: row("Together", num(String(inputs.length)), ""),
    compact: true,
  };
}

function kindOf(
  { id, distribution }: NamedInput,
  { run }: ReportContext,
  typed: ReadonlySet<string>,
): string {
  if (run.assumptions.entries.has(id)) return `assumptions “${id.split(".")[0]}”`;
  if (id === hydrologicYearId) return "operating year, of the record's years";
  if (distribution.kind === "beta") return "shares of boats found fouled";
  return typed.has(id)
    ? "quantities of the study typed as one number"
    : "quantities of the study with a range";
}

function distributionsText(members: readonly NamedInput[]): string {
  const kinds = grouped(members, ({ distribution }) => distributionNames[distribution.kind]);
  return kinds
    .sort((one, other) => other[1].length - one[1].length)
    .map(([name, { length }]) => (kinds.length === 1 ? name : `${length} ${name}`))
    .join(", ");
}

function grouped(inputs: readonly NamedInput[], by: (input: NamedInput) => string): [string, NamedInput[]][] {
  const groups = new Map<string, NamedInput[]>();
  for (const input of inputs) groups.set(by(input), [...(groups.get(by(input)) ?? []), input]);
  return [...groups];
}
