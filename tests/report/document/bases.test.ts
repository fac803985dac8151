import { describe, expect, it } from "vitest";
import { appendixView } from "../../../src/report/document/appendix-view.js";
import { reportContext } from "../../../src/report/document/context.js";
import { exampleRun } from "../runs.js";

describe("what the report says of the origin of its assumptions", () => {
  const run = exampleRun("sorrel-bend");
  const { bases } = appendixView(reportContext(run));
  const used = run.usedAssumptions.flatMap((id) => run.assumptions.entries.get(id) ?? []);
  const own = new Set(run.overrides.map(({ entry }) => entry.id));
  const readAs = (read: string) =>
    used.filter(
      ({ id, basis, source }) =>
        !own.has(id) && basis !== "judged" && run.assumptions.sources.get(source)?.read === read,
    ).length;

  it("counts them by basis", () => {
    const judged = used.filter(({ id, basis }) => basis === "judged" && !own.has(id)).length;
    expect(bases).toContain(`Of ${used.length} assumptions used: `);
    expect(bases).toContain(`${judged} judged`);
  });

  it("counts those that are not judged by how their source was read", () => {
    const counts = ["text", "abstract", "secondary", "not read"].map(readAs);
    for (const count of counts) expect(count).toBeGreaterThan(0);
    const [text, abstract, secondary, memory] = counts;
    expect(bases).toContain(
      `${text} in its text, ${abstract} in an abstract, ${secondary} at second hand, ${memory} not at all: they are from memory.`,
    );
  });
});
