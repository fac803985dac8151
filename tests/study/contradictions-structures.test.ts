import { describe, expect, it } from "vitest";
import { readStudyText } from "../../src/study/reading/read.js";
import { type Contradicting, expectContradiction, typed } from "./contradicting.js";
import { absent, editedText, problemsIn } from "./example.js";

const months = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];
const everyMonth = (value: string) => Object.fromEntries(months.map((month) => [month, value]));

const cases: readonly Contradicting[] = [
  {
    why: "an intake above the highest level",
    edits: [["structures[intake].elevation", "9,000 ft"]],
    allowed: `the lake's maximum, ${typed("lake.maximumElevation")}`,
  },
  {
    why: "a power intake above the highest level",
    edits: [["structures[hydropower].elevation", "9,000 ft"]],
    allowed: "the lake's maximum",
  },
  {
    why: "a tailwater above the highest level",
    edits: [["structures[hydropower].tailwaterElevation", "9,000 ft"]],
    allowed: "an elevation",
  },
  {
    why: "a power plant without flow",
    edits: [["structures[hydropower].running.flow", everyMonth("0 cfs")]],
    allowed: "above zero in at least one month",
  },
  {
    why: "a clean rack above its own velocity limit",
    edits: [["structures[intake].rack.velocityLimit", "0.001 ft/s"]],
    found: "0.001 ft/s",
    allowed: "the clean rack has at the largest flow",
  },
  {
    why: "a fixed dock without an elevation",
    edits: [
      ["structures[dock].elevation", absent],
      ["structures[dock].depth", absent],
      ["structures[dock].floating", false],
    ],
    found: "nothing",
    allowed: "the dock is fixed",
  },
  {
    why: "a floating dock without a depth",
    edits: [["structures[floating].depth", absent]],
    found: "nothing",
    allowed: "the dock is floating",
  },
  {
    why: "a floating dock with an elevation",
    edits: [["structures[floating].elevation", "2,000 ft"]],
    found: "2,000 ft",
    allowed: "no value, since the dock is floating",
  },
  {
    why: "a ramp whose bottom is above its top",
    edits: [["structures[ramp].bottomElevation", "9,000 ft"]],
    allowed: `below the top of the ramp, ${typed("structures[ramp].topElevation")}`,
  },
  {
    why: "a ramp whose bottom is at its top",
    edits: [["structures[ramp].bottomElevation", typed("structures[ramp].topElevation")]],
    allowed: "below the top of the ramp",
  },
  {
    why: "a structure with the id of another",
    edits: [["structures[1].id", typed("structures[0].id")]],
    found: "a second time",
    allowed: "an id used once",
  },
  {
    why: "a structure that nobody known pays for",
    edits: [["structures[intake].bearer", "nobody"]],
    found: '"nobody"',
    allowed: `money.bearers: ${typed("money.bearers[0].id")}`,
  },
];

describe("a structure", () => {
  it.each(cases)("is refused for $why", expectContradiction);

  it("may have a rack with the velocity limit that the message asks for", () => {
    // 0.57 m³/s through 10 m × 1 m of which half is open: 0.114 m/s
    const rack = [
      ["structures[intake].demand", everyMonth("0.57 m3/s")],
      ["structures[intake].rack.width", "10 m"],
      ["structures[intake].rack.height", "1 m"],
      ["structures[intake].rack.barThickness", "20 mm"],
      ["structures[intake].rack.clearSpacing", "20 mm"],
    ] as const;
    const limit = "structures[intake].rack.velocityLimit";
    const [problem] = problemsIn(editedText([...rack, [limit, "0.05 m/s"]]));
    const asked = /at least ([0-9.]+ m\/s)/.exec(problem?.allowed ?? "")?.[1];
    expect(asked).toBeDefined();
    expect(() => readStudyText(editedText([...rack, [limit, asked]]), "study.yaml")).not.toThrow();
  });
});
