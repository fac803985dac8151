import { describe, expect, it } from "vitest";
import { parse, stringify } from "yaml";
import { assumptionFiles, readAssumptions } from "../../src/assumptions/load.js";
import { applyOverrides } from "../../src/assumptions/override.js";
import { assumptionsFolder, realSet } from "./real.js";

const files = assumptionFiles(assumptionsFolder);
const textOf = (name: string) => files.get(name) ?? "";

interface Plan {
  readonly id: string;
  readonly numbers?: Readonly<Record<string, string>>;
}

/** The catalogue as reports carry it that were issued before entries named their numbers: by the middle word of the ids. */
const earlierCatalogue = stringify(
  (parse(textOf("protection-plans.yaml")) as Plan[]).map(({ numbers = {}, ...plan }) => {
    const [first] = Object.values(numbers);
    const middle = first?.split(".")[1];
    // Plans that share some numbers and have others of their own came later, and name theirs.
    if (Object.values(numbers).some((id) => id.split(".")[1] !== middle)) return { ...plan, numbers };
    return middle === undefined || middle === plan.id ? plan : { ...plan, numbers: middle };
  }),
);

/** An assumption that their files hold and that the model never read. */
const unread =
  "- { id: oxidant.start-density, value: 5, unit: '%', low: 1, high: 20, basis: judged, source: project-judgement, note: '' }\n";

/** The lists of entries, when few of them had titles and none had other words. */
const withoutTitles = [...files].map(
  ([name, text]) => [name, text.replaceAll(/(?:title: "[^"]*"|synonyms: \[[^\]]*\]), /g, "")] as const,
);

const earlier = readAssumptions(
  new Map([
    ...withoutTitles,
    ["protection-plans.yaml", earlierCatalogue],
    ["upkeep.yaml", `${new Map(withoutTitles).get("upkeep.yaml")}\n${unread}`],
  ]),
  realSet(),
);

describe("assumptions of an earlier version, as issued reports carry them", () => {
  const now = realSet();

  it("still give the plans their numbers", () => {
    expect(earlierCatalogue).not.toContain("capital: plan.heat");
    expect(earlierCatalogue).toContain("numbers: oxidant");
    expect(earlier.plans).toEqual(now.plans);
  });

  it("have the titles of today, and what is gone its id", () => {
    expect(earlier.entries.get("cleaning.rack.base")?.title).toBe(
      now.entries.get("cleaning.rack.base")?.title,
    );
    expect(earlier.entries.get("oxidant.start-density")?.title).toBe("oxidant.start-density");
  });

  it("may hold what is read no longer, and a study its own value for it", () => {
    const { "oxidant.start-density": retired, ...others } = Object.fromEntries(earlier.entries);
    const entries = [...now.entries].map(([id, { synonyms, ...entry }]) => [id, entry]);
    const read = Object.entries(others).map(([id, { synonyms, ...entry }]) => [id, entry]);
    expect(Object.fromEntries(read)).toEqual(Object.fromEntries(entries));
    expect(retired).toMatchObject({ value: 0.05, unit: "share" });
    const own = { id: "oxidant.start-density", value: "3 %", reason: "measured" };
    expect(applyOverrides(earlier, [own]).problems).toEqual([]);
  });
});
