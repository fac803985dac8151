import { describe, expect, it } from "vitest";
import { at } from "../../src/lists.js";
import { reportContext } from "../../src/report/document/context.js";
import { partGroups } from "../../src/report/rack/part-groups.js";
import { partFacts } from "../../src/report/rack/part-plans.js";
import type { PlanTurn } from "../../src/study/odds/odds.js";
import { exampleRun } from "./runs.js";

const context = reportContext(exampleRun("sorrel-bend"));
const groups = partGroups(context.comparison);
const group = at(groups, 0);

/** Invented shares, of the first part. */
const turn: PlanTurn = {
  structure: at(group.ids, 0),
  structureName: at(group.structures, 0),
  part: group.component.name,
  plan: { id: "own", name: "own plan" },
  share: 0.25,
  other: { id: "divers", name: "cleaned by divers", share: 0.2 },
  by: { id: "shell.growth-rate", name: "growth rate of shells", apart: 0.8 },
};
const factsWith = (planTurns: readonly PlanTurn[], index = 0) =>
  partFacts(at(groups, index), { ...context, planTurns }).join(" ");

describe("a plan that what is uncertain turns", () => {
  it("is told beside its part, with how often and by what", () => {
    expect(factsWith([turn])).toContain(
      "In 25% of simulated lakes another plan costs less, most often: cleaned by divers. They differ from the rest most in the growth rate of shells, which is higher there.",
    );
    expect(factsWith([turn], 1)).not.toContain("simulated lakes");
  });

  it("names lower values, and no input where none tells", () => {
    const lower = { id: "wage", name: "wage", apart: -0.6 };
    expect(factsWith([{ ...turn, by: lower }])).toContain("most in the wage, which is lower there.");
    expect(factsWith([{ ...turn, by: undefined }])).not.toContain("They differ");
  });

  it("is told with the only other plan, and not where it is rare or was not drawn", () => {
    expect(factsWith([{ ...turn, share: 0.2 }])).toContain("another plan costs less: cleaned by divers.");
    expect(factsWith([{ ...turn, share: 0.09, other: { ...turn.other, share: 0.05 } }])).not.toContain(
      "simulated lakes",
    );
    expect(factsWith([])).not.toContain("simulated lakes");
  });
});
