import { at, numbersBy } from "../../lists.js";
import type { Assumed } from "../../model/assumed.js";
import type { ProgramOption } from "../../model/inputs.js";
import { priceGroupOf } from "../../model/money/price-group.js";
import { type Rises, riseIn } from "../../model/money/price-rises.js";
import type { AssumptionId } from "../../model/register/register.js";
import type { PaidWhen, PricedPhase } from "../../model/risk/course.js";
import { treatmentCost } from "../../model/risk/treatment.js";
import type { Structure } from "../../model/structures/kinds.js";
import type { PhaseDocument } from "../format/found-schema.js";
import type { StudyDocument } from "../format/schema.js";

const paidWhen: Readonly<Record<PhaseDocument["phase"], PaidWhen>> = {
  suspicion: "found",
  confirmation: "found",
  delimiting: "found",
  structures: "found",
  restriction: "found",
  treatment: "tried",
  "leaving-boats": "known",
  levels: "known",
  watch: "watched",
  delisting: "delisted",
};

export interface PhasePrice extends PricedPhase {
  readonly phase: PhaseDocument;
}

interface PhaseParts {
  readonly phases: readonly PhaseDocument[];
  readonly structures: readonly Structure[];
  readonly option: Pick<ProgramOption, "response">;
  readonly assumed: Assumed;
  readonly factors: readonly number[];
  readonly rises: Rises;
}

/** Assumptions behind the prices. */
export const phaseAssumptions = ({ report }: Pick<StudyDocument, "report">): AssumptionId[] =>
  (report.found?.phases ?? []).some(isPricedByVolume) ? ["response.treatment-price"] : [];

const isPricedByVolume = ({ volume, cost, item }: PhaseDocument) =>
  volume !== undefined && cost === undefined && item === undefined;

/** Whether the comparison has it: a duty or policy of the lake, or the option's response. */
export const isCounted = ({ phase, cost, volume, item }: PhaseDocument): boolean =>
  item !== undefined || (phase === "treatment" && cost === undefined && volume === undefined);

/** The phases of a study with what each costs one of its options. */
export const phasePrices = (parts: PhaseParts): PhasePrice[] =>
  parts.phases.map((phase) => phasePrice(phase, parts));

function phasePrice(phase: PhaseDocument, parts: PhaseParts): PhasePrice {
  const { option, assumed, factors } = parts;
  const when = paidWhen[phase.phase];
  if (phase.item !== undefined) {
    return { phase, when: "known", parts: itemParts(phase.item, parts) };
  }
  if (isCounted(phase)) {
    const { response } = option;
    const inYear = risen(priceGroupOf({ type: "work", quantityKind: "each" }), parts);
    const amounts = response ? [{ amount: response.cost, fromAge: 0, inYear }] : [];
    return { phase, when, parts: amounts };
  }
  const amount = phase.cost?.value ?? (phase.volume ? treatmentCost(phase.volume.value, assumed) : 0);
  return { phase, when, parts: [{ amount, fromAge: 0, inYear: factors }] };
}

/** A yearly amount of the lake, with the rise of its price as the comparison has it. */
function itemParts(name: string, parts: PhaseParts): PricedPhase["parts"] {
  const items = parts.structures.flatMap((structure) =>
    "items" in structure ? structure.items.filter((item) => item.name === name && !item.apart) : [],
  );
  return items.map(({ cost, fromYear, policy }) => ({
    amount: cost,
    fromAge: fromYear - 1,
    inYear: risen(priceGroupOf({ type: policy ? "policy" : "duty", quantityKind: "year" }), parts),
  }));
}

const risen = (group: Parameters<typeof riseIn>[0], { factors, rises }: PhaseParts) =>
  numbersBy(factors.length, (year) => at(factors, year) * riseIn(group, year, rises));
