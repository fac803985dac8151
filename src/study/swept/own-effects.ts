import type { AssumptionSet } from "../../assumptions/entry.js";
import type { ParsedStudy } from "../reading/read.js";
import type { Setting } from "./settings.js";
import { type SweptPoint, sweptPoints } from "./sweep.js";

/** Net benefit of the requested option at central values; undefined where the study cannot be computed. */
type NetBenefit = number | undefined;

/** What own values do to the answer. */
export interface OwnEffects {
  readonly currency: string;
  readonly option: string;
  readonly before: NetBenefit;
  /** Of each value alone, in order; none past the first few. */
  readonly alone: readonly NetBenefit[];
  readonly all: NetBenefit;
}

/** More are told together alone: each takes a comparison. */
const mostAlone = 40;

/** The net benefit before, with each own value alone, and with all of them. @throws InputError of an unfinished study */
export function ownEffects(parsed: ParsedStudy, values: readonly Setting[], set: AssumptionSet): OwnEffects {
  const each = values.slice(0, mostAlone).map((value) => [value]);
  const { document, points } = sweptPoints(parsed, [[], ...each, values], set);
  const { requestedOption } = document.study;
  const netOf = (point: SweptPoint | undefined) =>
    point?.options.find(({ id }) => id === requestedOption)?.netBenefit;
  return {
    currency: document.money.currency,
    option: document.options.find(({ id }) => id === requestedOption)?.name ?? requestedOption,
    before: netOf(points[0]),
    alone: points.slice(1, -1).map(netOf),
    all: netOf(points.at(-1)),
  };
}
