import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { loadAssumptions } from "../../../src/assumptions/load.js";
import { sensitivitySentences } from "../../../src/report/odds/sensitivity-sentences.js";
import { formatter } from "../../../src/report/words/format.js";
import { inputText } from "../../../src/report/words/input-text.js";
import type { TornadoBar } from "../../../src/study/odds/odds.js";
import { hydrologicYearId } from "../../../src/study/odds/odds.js";
import { readStudyText } from "../../../src/study/reading/read.js";
import { typedQuantities } from "../../../src/study/typed/typed-quantities.js";
import { editedText, exampleText } from "../../study/example.js";

const assumptions = loadAssumptions(fileURLToPath(new URL("../../../assumptions", import.meta.url)));
const document = readStudyText(
  editedText([["structures[city-intake].alternativeWater", "$250 to $400/acre-ft"]]),
  "lake.yaml",
);
const reading = {
  ...{ document, assumptions, format: formatter("USD", "us") },
  typed: () => typedQuantities(document, assumptions),
};
const metric = { ...reading, format: formatter("USD", "si") };
const ninemoss = readStudyText(exampleText("ninemoss"), "ninemoss.yaml");
const recorded = { ...reading, document: ninemoss };

describe("values of inputs for a reader", () => {
  it.each([
    // Converted by hand: 8 °C is 46.4 °F; 0.015 m is 0.591 in; 4,000 per m² is 371.6 per ft²; 300 $/m² is 27.87 $/ft²;
    // 706,293 $ per m³/s is 20,000 per cfs (0.0283168 m³/s to the cfs);
    // 0.20 $/m³ is 246.7 $/acre-ft (1,233.48 m³).
    ["arrival.founding-unknown", 0.0001, "0.01%", "0.01%"],
    ["arrival.founding-unknown", 0.01, "1%", "1%"],
    ["settlement.spawning-temperature.quagga", 8, "46.4 °F", "8 °C"],
    ["conduit.largest-layer", 0.015, "0.591 in", "15 mm"],
    ["shell.maximum-length", 30, "1.18 in", "30 mm"],
    ["growth.settlers-per-month", 4000, "372 per ft²", "4,000 per m²"],
    ["cleaning.rack.base", 300, "$27.87/ft²", "$300/m²"],
    ["cleaning.conduit.visit", 15000, "$15,000", "$15,000"],
    ["plan.oxidant.capital", 706_293, "$20,000/cfs", "$706,000/(m³/s)"],
    ["arrival.shape", 1.3173766, "1.32", "1.32"],
    ["growth.yearly-mortality", 0.5, "50%/yr", "50%/yr"],
    ["population.years-to-peak.quagga-shallow", 4, "4 yr", "4 yr"],
    ["shell.growth-rate", 0.00035, "0.000194 per °F day", "0.00035 per °C day"],
    ["growth.bulk-density", 500, "31.2 lb/ft³", "500 kg/m³"],
    ["structures/city-intake/alternativeWater", 0.2, "$247/acre-ft", "$0.20/m³"],
  ])("%s of %d is %s, or %s", (id, value, us, si) => {
    expect(inputText(id, value, reading)).toBe(us);
    expect(inputText(id, value, metric)).toBe(si);
  });

  it("of the operating year is its label", () => {
    const label = inputText(hydrologicYearId, 0, recorded);
    expect(label).toMatch(/^(19|20)\d\d/);
    expect(inputText(hydrologicYearId, 1, recorded)).not.toBe(label);
    expect(() => inputText(hydrologicYearId, 500, recorded)).toThrow("no year 500");
  });
});

const chance = "arrival.founding-unknown";
const bar = (id: string, name: string, low: number, high: number, rest: object = {}): TornadoBar => ({
  id,
  name,
  low: { input: 0.0001, netBenefit: low },
  high: { input: 0.01, netBenefit: high },
  ...rest,
});

describe("sentences for the board", () => {
  it("say what the program saves or costs at both ends", () => {
    const title = assumptions.entries.get(chance)?.title ?? "";
    expect(
      sensitivitySentences({ tornado: [bar(chance, title, -2_510_041, 1_648_706)] }, 3, reading),
    ).toEqual([
      "If the chance that a fouled launch of unknown origin founds a population is at its low end, 0.01%, the program costs $2,510,000 more than it saves; at its high end, 1%, it saves $1,650,000 more than it costs.",
    ]);
  });

  it("tell a group as such and then none of its members", () => {
    const tornado = [
      bar("g", "growth of the population, together", -5000, 0.2, { members: ["growth.cover-limit", chance] }),
      bar(chance, "chance", -1, 1),
      bar("arrival.shape", "arrival.shape", 5000, 9000),
    ];
    expect(sensitivitySentences({ tornado }, 3, reading)).toEqual([
      "If all 2 assumptions behind the growth of the population, together, are at their low ends, the program costs $5,000 more than it saves; at their high ends, it saves as much as it costs.",
      "If the assumption arrival.shape is at its low end, 0.0001, the program saves $5,000 more than it costs; at its high end, 0.01, it saves $9,000 more than it costs.",
    ]);
  });

  it("do not tell one amount twice, as if it were two", () => {
    const tornado = [bar("arrival.shape", "shape", -665_946, -666_046)];
    expect(sensitivitySentences({ tornado }, 3, reading)).toEqual([
      "If the shape is at its low end, 0.0001, or at its high end, 0.01, the program costs about $666,000 more than it saves.",
    ]);
  });

  it("tell years by their labels", () => {
    const years = bar(hydrologicYearId, "operating year of the record", -5000, 7000, {
      low: { input: 1, netBenefit: -5000 },
      high: { input: 0, netBenefit: 7000 },
    });
    const [text] = sensitivitySentences({ tornado: [years] }, 1, recorded);
    expect(text).toMatch(
      /^If every year were like \S+, the program costs \$5,000 more than it saves; if every year were like \S+, it saves \$7,000 more than it costs\.$/,
    );
  });
});

describe("titles of assumptions", () => {
  it("stand after an article, without a full stop, each once", () => {
    const titles = [...assumptions.entries.values()].flatMap(({ title }) => title ?? []);
    expect(titles.length).toBeGreaterThanOrEqual(25);
    expect(new Set(titles).size).toBe(titles.length);
    for (const title of titles) expect(title).toMatch(/^(?!the |a |an )[a-z].*[^.]$/);
  });
});
