import { describe, expect, it } from "vitest";
import { readExamples } from "../../../src/app/examples.js";
import { draftOf } from "../../../src/editor/draft.js";
import { triedText } from "../../../src/editor/tried-text.js";
import { comparedRun } from "../../../src/study/compared/compared.js";
import { keptSchedules } from "../../../src/study/compared/kept-schedules.js";
import { readStudyText } from "../../../src/study/reading/read.js";
import { assumptions } from "../../report/runs.js";

type Group = Record<string, unknown>;

/** An edit of each kind that somebody makes: of boats, options, money, levels, a structure, an own value. */
const edits: ReadonlyArray<(study: Record<string, Group & Group[]>) => void> = [
  ({ boats }) => Object.assign(boats?.launches ?? {}, { jul: "4321" }),
  ({ options }) => Object.assign(options?.find(({ steps }) => steps) ?? {}, { yearly: [] }),
  ({ money }) => Object.assign(money ?? {}, { horizon: 25 }),
  ({ money }) => Object.assign(money ?? {}, { priceYear: 2024 }),
  ({ lake }) => Object.assign(lake?.chemistry ?? {}, { calcium: "21 mg/l" }),
  ({ structures }) => structures?.reverse(),
  (study) =>
    Object.assign(study, { overrides: [{ id: "growth.settlers-per-month", value: 5000, reason: "tried" }] }),
];

const figures = (run: ReturnType<typeof comparedRun>) => ({
  answers: run.comparison.options.map(({ result, netBenefit }) => [
    result.option.id,
    netBenefit.toString(),
    result.presentValue.total.toString(),
  ]),
  checks: [...run.comparison.checks, ...run.comparison.entryChecks].map((each) => JSON.stringify(each)),
  used: [...run.usedAssumptions].sort(),
});

describe("schedules that are kept from key to key", () => {
  it.each(readExamples().map(({ id, text, fileName }) => ({ id, text, fileName })))(
    "give what $id gives when it is worked out anew, whatever was edited before",
    ({ text, fileName }) => {
      const kept = keptSchedules(1);
      const { document } = draftOf(text, fileName);
      const changed = JSON.parse(JSON.stringify(document));
      comparedRun(readStudyText(triedText(document, []), fileName), assumptions, kept);
      for (const edit of edits) {
        edit(changed);
        const study = readStudyText(JSON.stringify(changed), fileName);
        expect(figures(comparedRun(study, assumptions, kept))).toEqual(
          figures(comparedRun(study, assumptions)),
        );
      }
    },
  );
});
