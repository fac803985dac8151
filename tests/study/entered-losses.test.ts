import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { readStudyText } from "../../src/study/reading/read.js";
import { editedText, inputErrorOf } from "./example.js";

const folder = fileURLToPath(new URL("../bad/entered", import.meta.url));

const readWith = (items: unknown) =>
  readStudyText(editedText([["structures[lake-wide].items", items]]), "study.yaml");

/** Each file of yearly amounts that cannot be used: the end of the place, what was found, what is allowed, what to do. */
const badFiles = [
  ["other-currency", "items[0].cost", '"€150,000/yr"', "an amount in the study's currency, USD", ""],
  [
    "other-price-year",
    "items[0].pricesOf",
    "$150,000/yr in prices of 2019",
    "prices of 2025, the study's price year",
    "Multiply it by the index of 2025 over that of 2019",
  ],
  [
    "policy-set-apart",
    "items[0].policy",
    "closed-to-boats beside apart: true",
    "not both",
    "Remove one of the two",
  ],
  [
    "two-policies",
    "items[1].policy",
    "checks-of-leaving-boats (“Checks of leaving boats”) beside closed-to-boats (“Gate kept shut”)",
    "they exclude each other",
    "a study of its own",
  ],
  ["unknown-policy", "items[0].policy", '"closed"', "closed-to-boats", ""],
] as const;

describe("yearly amounts that staff entered", () => {
  it("have one malformed file for each mistake", () => {
    const names = badFiles.map(([name]) => `${name}.yaml`).sort();
    expect(readdirSync(folder).sort()).toEqual(names);
  });

  it.each(badFiles)("are refused at their place: %s", (name, place, found, allowed, remedy) => {
    const items: unknown = parse(readFileSync(join(folder, `${name}.yaml`), "utf8"));
    const { problems } = inputErrorOf(() => readWith(items));
    expect(problems).toHaveLength(1);
    const [problem] = problems;
    expect(problem?.path).toContain(place);
    expect(problem?.found).toContain(found);
    expect(problem?.allowed).toContain(allowed);
    expect(problem?.remedy ?? "").toContain(remedy);
  });

  it("are taken in the study's own prices, and as one policy", () => {
    const items = [
      { name: "Spending lost", cost: "$1,000/yr", origin: "invented", apart: true, pricesOf: 2025 },
      { name: "Gate kept shut", cost: "$20,000/yr", origin: "invented", policy: "closed-to-boats" },
    ];
    expect(() => readWith(items)).not.toThrow();
  });
});
