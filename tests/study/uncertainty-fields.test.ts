import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { oddsSettings } from "../../src/study/format/uncertainty-schema.js";
import { readStudyText } from "../../src/study/reading/read.js";
import { editedText, problemsIn, wordsOfTheProgram } from "./example.js";

const folder = fileURLToPath(new URL("../bad/uncertainty", import.meta.url));
const place = "study.uncertainty";

/** Each file of a field that cannot be used: where, what was found, what is allowed. */
const badFiles = [
  ["seed-half", ".seed", "1.5", "a whole number"],
  ["seed-negative", ".seed", "-1", "a whole number from 0"],
  ["seed-in-words", ".seed", '"today"', "a whole number"],
  ["unknown-sampling", ".sampling", '"dice"', "one of latin-hypercube, sobol"],
  ["confidence-of-all", ".confidence", '"100 %"', "a share from 50 to 99 %"],
  ["confidence-below-half", ".confidence", '"20 %"', "a share from 50 to 99 %"],
  ["confidence-with-range", ".confidence", '"70 to 90 %"', "one share without a range"],
  ["precision-of-nothing", ".precision", '"0 %"', "a share from 0.1 to 50 %"],
  ["precision-above-half", ".precision", '"60 %"', "a share from 0.1 to 50 %"],
  ["precision-with-range", ".precision", '"5 to 10 %"', "one share without a range"],
  ["futures-of-one-block", ".mostFutures", "128", "at least 256 futures"],
  ["futures-beyond-memory", ".mostFutures", "1000000", "at most 204,800 futures"],
  ["half-a-future", ".mostFutures", "5000.5", "a whole number of futures"],
  ["unknown-field", ".futures", "an unknown key", "only the keys of the study format"],
] as const;

describe("how futures are drawn", () => {
  it.each(badFiles)("is refused for %s", (name, field, found, allowed) => {
    const uncertainty: unknown = parse(readFileSync(join(folder, `${name}.yaml`), "utf8"));
    const problems = problemsIn(editedText([["study.uncertainty", uncertainty]]));
    expect(problems).toEqual([
      {
        path: `${place}${field}`,
        found: expect.stringContaining(found),
        allowed: expect.stringContaining(allowed),
        remedy: expect.stringMatching(/^[A-Z].*\.$/),
      },
    ]);
    for (const part of Object.values(problems[0] ?? {})) expect(wordsOfTheProgram(part)).toBeUndefined();
  });

  it("is tried with every file of the folder", () => {
    const tried = badFiles.map(([name]) => `${name}.yaml`);
    expect(readdirSync(folder).filter((file) => !tried.includes(file))).toEqual([]);
  });

  it("is the usual way where nothing is said, and as stated otherwise", () => {
    const settingsWith = (uncertainty: unknown) =>
      oddsSettings(
        readStudyText(editedText([["study.uncertainty", uncertainty]]), "study.yaml").study.uncertainty,
      );
    const usual = {
      seed: 1,
      sampling: "latin-hypercube",
      confidence: 0.8,
      precision: 0.05,
      mostFutures: 12_288,
    };
    expect(oddsSettings(undefined)).toEqual(usual);
    expect(settingsWith({})).toEqual(usual);
    const stated = { seed: 12, sampling: "sobol", mostFutures: 4096 };
    expect(settingsWith({ ...stated, confidence: "90 %", precision: "10 %" })).toEqual({
      ...stated,
      confidence: 0.9,
      precision: 0.1,
    });
  });
});
