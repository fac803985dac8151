import { comparedRun } from "../../src/study/compared/compared.js";
import type { StudyDocument } from "../../src/study/format/schema.js";
import { readStudyText } from "../../src/study/reading/read.js";
import { assumptions } from "../report/runs.js";
import { type ExampleName, editedText, exampleDocument, placeIn } from "./example.js";

/** One value of an example typed wrong, and what is told of it. */
export interface Slip {
  readonly why: string;
  readonly example: ExampleName;
  /** Where it is typed, and where it is told. */
  readonly place: string;
  readonly value: unknown;
  readonly at: string;
  readonly found: string;
  readonly allowed: string;
}

/** Slips from lines "why | example | place | value | found | allowed | place where it is told, if another". */
export const slipsOf = (lines: string): Slip[] =>
  lines
    .trim()
    .split("\n")
    .map((line) => {
      const [why = "", lake, place = "", value = "", found = "", allowed = "", at = place] = line
        .split("|")
        .map((each) => each.trim());
      const example = lake === "ninemoss" ? "ninemoss" : "sorrel-bend";
      return { why, example, place, value, at, found, allowed };
    });

export const readSlip = ({ example, place, value }: Slip): StudyDocument =>
  readStudyText(editedText([[place, value]], example), "study.yaml");

export const runOf = (slip: Slip) => comparedRun(readSlip(slip), assumptions);

export const toldAt = ({ example, at }: Slip) => placeIn(exampleDocument(example), at);
