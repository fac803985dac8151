import { readExamples } from "../../app/examples.js";
import { draftOf } from "../../editor/draft.js";
import { once } from "../../model/computed-once.js";

const drafts = once(() => readExamples().map(({ text, fileName }) => draftOf(text, fileName)));

/** The invented lakes, of which fields show a value; those in the same units first. */
export const exampleDocuments = (system: "us" | "si"): readonly unknown[] =>
  [...drafts()]
    .sort((one, other) => Number(other.writing.system === system) - Number(one.writing.system === system))
    .map(({ document }) => document);
