import { agencyFile, withAgency } from "../../assumptions/agency.js";
import type { AssumptionSet } from "../../assumptions/entry.js";
import { type AppliedOverride, applyOverrides, assumedFrom } from "../../assumptions/override.js";
import { type Assumed, recorder } from "../../model/assumed.js";
import type { StudyInput } from "../../model/inputs.js";
import type { ClassChance } from "../../model/program/class-chances.js";
import { amountAllowed, isForeignAmount } from "../checks/consistency-currency.js";
import { impossibleProblems } from "../checks/impossible.js";
import { amountProblems } from "../checks/impossible-amounts.js";
import { pinnedProblems } from "../checks/pinned-plans.js";
import type { StudyDocument } from "../format/schema.js";
import { requestAmountProblems } from "../papers/request-amounts.js";
import type { Contradiction } from "../reading/contradiction.js";
import { describe, InputError, type Problem, pathText, problemOf } from "../reading/problems.js";
import { tellingAmounts } from "./amounts.js";
import { estimateOf, logSpreadsOf, notYetEstimated } from "./chance-estimate.js";
import { noticeProblems } from "./planning-notices.js";
import { type StudyPrices, studyPrices } from "./prices.js";
import { regionProblems, withoutRegions } from "./regions-left-out.js";
import { boatsOf, type ChanceEstimate, plainBoats, toModel } from "./to-model.js";
import { type StudyTraffic, trafficOf } from "./traffic.js";
import { vesselChances } from "./vessel-chances.js";

/** A study as the model takes it, with its overrides applied. */
export interface PreparedStudy {
  /** Without the regions that the study leaves out of the estimate of its chance. */
  readonly assumptions: AssumptionSet;
  readonly input: StudyInput;
  readonly assumed: Assumed;
  readonly overrides: readonly AppliedOverride[];
  readonly prices: StudyPrices;
  readonly chances: readonly ClassChance[];
  readonly traffic: StudyTraffic | undefined;
  readonly estimate: ChanceEstimate;
  /** Ids of the assumptions behind the input itself. */
  readonly inputAssumptions: readonly string[];
}

/** Applies a study's overrides. @throws InputError naming each override or prescribed plan that cannot be used */
export function prepareStudy(document: StudyDocument, all: AssumptionSet): PreparedStudy {
  refuse(document, regionProblems(document, all));
  const set = withoutRegions(all, document.boats.chance.leaveOutRegions);
  const { prices, problems: priceProblems } = studyPrices(document.money, set);
  refuse(
    document,
    [...noticeProblems(document.money, set), ...priceProblems].map((each) => problemOf(each, document)),
  );
  const { factorOf } = prices;
  const applied = appliedOverrides(document, set, factorOf);
  const assumed = assumedFrom(set, applied, factorOf);
  const { assumed: recorded, ids } = recorder(assumed);
  const chances = vesselChances(document.boats, recorded);
  const traffic = trafficOf(document.boats);
  const before = { ...toModel(document, { chances, traffic, estimate: notYetEstimated }), plans: set.plans };
  const estimate = estimateOf(document, before, recorded, logSpreadsOf(set.entries, applied));
  const boats = boatsOf(plainBoats(document.boats), document.money, { chances, traffic, estimate });
  const input = { ...before, boats };
  const inDocument = (each: Contradiction) => problemOf(each, document);
  refuse(
    document,
    [...amountProblems(document, assumed), ...impossibleProblems(document, input, assumed)].map(inDocument),
  );
  refuse(document, tellingAmounts(document, () => requestAmountProblems(document, input)).map(inDocument));
  refuse(
    document,
    pinnedProblems(input, assumed).map(({ path, found, allowed }) => ({
      path: pathText(path, document),
      at: path,
      found,
      allowed,
      remedy: "Correct or remove this prescribed plan.",
    })),
  );
  return {
    assumptions: set,
    input,
    assumed,
    overrides: applied,
    prices,
    chances,
    traffic,
    estimate,
    inputAssumptions: ids(),
  };
}

/** The study's own values, and those of its agency's set for the rest. @throws InputError for what cannot be used */
function appliedOverrides(
  document: StudyDocument,
  set: AssumptionSet,
  factorOf: StudyPrices["factorOf"],
): readonly AppliedOverride[] {
  const overrides = withAgency(document.overrides, set.agency);
  const foreign = overrides
    .slice(document.overrides.length)
    .filter(({ value }) => isForeignAmount(value, document.money.currency));
  refuse(
    document,
    foreign.map(({ id, value }) => ({
      path: `${agencyFile}: ${id}`,
      found: describe(value),
      allowed: amountAllowed(document.money.currency),
      remedy: remedyInSet,
    })),
  );
  const { applied, problems } = applyOverrides(set, overrides, factorOf);
  refuse(
    document,
    problems.map(({ index, field, found, allowed }) => ({
      ...(index < document.overrides.length
        ? { path: pathText(["overrides", index, field], document), at: ["overrides", index, field] }
        : { path: `${agencyFile}: ${overrides[index]?.id}` }),
      found: describe(found),
      allowed,
      remedy: index < document.overrides.length ? "Correct or remove this override." : remedyInSet,
    })),
  );
  return applied;
}

const remedyInSet = "Correct it there, or give this study a value of its own.";

function refuse(document: StudyDocument, problems: readonly Problem[]): void {
  if (problems.length > 0) throw new InputError(document.study.name, problems);
}
