import { monthDays, months } from "../../model/lake/calendar.js";
import { monthNames } from "../format/month-names.js";
import { isPoint, mapped, type Range, rangeOf } from "./amount-text.js";
import { shareOfMonths } from "./boats-part.js";
import type { ProgramFacts, ShortFacts } from "./facts-schema.js";
import type { Filling } from "./filling.js";
import type { TypicalValue } from "./typical-value.js";

export const wantedId = "wanted";
export const inForceId = "in-force";

/** What a program is for: to keep mussels out, or in an infested lake to keep them from leaving it. */
type Aim = "out" | "in";

/** Doing nothing, the current program if there is one, and the proposed one. @param launches shares of a year */
export function optionParts(facts: ShortFacts, launches: readonly number[], filling: Filling): object[] {
  const aim = facts.infestedSince === undefined ? "out" : "in";
  const inForce = facts.inForce
    ? [programPart({ id: inForceId, name: "Current program", aim }, facts.inForce, launches, filling)]
    : [];
  return [
    { id: "none", name: "No inspection program", afterInfestation: { share: "0 %" } },
    ...inForce,
    programPart({ id: wantedId, name: "Proposed program", aim }, facts.wanted ?? {}, launches, filling),
  ];
}

function programPart(
  { aim, ...names }: { readonly id: string; readonly name: string; readonly aim: Aim },
  facts: ProgramFacts,
  launches: readonly number[],
  filling: Filling,
): object {
  const { ranged } = filling;
  const plan = planOf(facts, filling);
  return {
    ...names,
    steps: {
      coverage:
        facts.gated === "yes"
          ? filling.ranged("typical.coverage-locked-ramp", "share")
          : coverage(plan, launches, filling),
      declaration: ranged("typical.declaration", "share"),
      quickCheck: ranged("typical.quick-check", "share"),
      inspection: ranged("typical.sensitivity", "share"),
      hotWash: ranged("typical.efficacy", "share"),
      origin: "typical values",
    },
    ...costs(facts, plan, filling),
    afterInfestation: { share: aim === "in" ? "100 %" : ranged("typical.after-share", "share") },
  };
}

interface Plan {
  /** Months from 0. */
  readonly from: number;
  readonly until: number;
  readonly hours: Range;
  readonly stations: number;
}

function planOf(facts: ProgramFacts, { typical }: Filling): Plan {
  const month = (name: ProgramFacts["from"], id: "typical.season-from" | "typical.season-until") =>
    name ? monthNames.indexOf(name) : typical(id).value - 1;
  const from = month(facts.from, "typical.season-from");
  const until = month(facts.until, "typical.season-until");
  return {
    from: facts.until ? Math.min(from, until) : from,
    until: facts.from ? Math.max(from, until) : until,
    hours: facts.hours ? rangeOf(facts.hours) : typical("typical.hours-a-day"),
    stations: facts.stations ?? typical("typical.stations").value,
  };
}

/** Stations of whom some pass, in the part of the season and of the day in which they are open. */
function coverage({ from, until, hours }: Plan, launches: readonly number[], filling: Filling): TypicalValue {
  const { typical } = filling;
  const day = typical("typical.launch-day").value;
  const closed = Math.max(0, 1 - hours.value / day);
  const open = (1 - closed ** typical("typical.hours-bend").value) * shareOfMonths(launches, from, until);
  return filling.ranged("typical.coverage-roadside", "share", (share) => share * open);
}

function costs(facts: ProgramFacts, plan: Plan, filling: Filling): object {
  if (!facts.cost) return estimated(plan, filling);
  const given = rangeOf(facts.cost);
  if (!isPoint(given)) return { yearly: [{ name: "Program as budgeted", cost: facts.cost.text }] };
  const comesOut = mapped(filling.typical("typical.cost-as-given"), (ratio) => ratio * given.value);
  return { yearly: [{ name: "Program as budgeted", cost: filling.text(comesOut, "moneyPerYear") }] };
}

/** Hours of stations by the people there and their wage, and other costs over these. */
function estimated({ from, until, hours, stations }: Plan, { typical, ranged }: Filling): object {
  const days = months
    .filter((month) => month >= from && month <= until)
    .reduce((sum, month) => sum + (monthDays[month] ?? 0), 0);
  const stationHours = days * hours.value * stations;
  const wages = stationHours * typical("typical.wage").value * typical("typical.inspectors").value;
  const origin = "typical values";
  return {
    yearly: [
      {
        ...{ name: "Inspectors", group: "wages", origin },
        cost: ranged(
          "typical.inspectors",
          "moneyPerYear",
          (people) => people * stationHours * typical("typical.wage").value,
        ),
      },
      {
        ...{ name: "Wash unit, training, supplies and the rest", group: "other", origin },
        cost: ranged("typical.other-costs", "moneyPerYear", (ratio) => ratio * wages),
      },
    ],
  };
}
