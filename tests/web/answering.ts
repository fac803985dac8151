import type { Answering } from "../../src/app/answers/questions.js";
import { sharedAnswers } from "../../src/app/answers/shared.js";
import { assumptionFiles } from "../../src/assumptions/load.js";
import { assumptionsFolder } from "../../src/report/document/assets.js";
import { assumptions } from "../report/runs.js";
import { answersHere } from "../trials/answers-here.js";

/** What studies are computed with in tests. */
export const means = { assumptions, files: assumptionFiles(assumptionsFolder) };

const here = answersHere(means);
const mostBytes = 50_000_000;
const shared = sharedAnswers(here, mostBytes);

const answers: Answering = {
  ...here,
  known: shared.known,
  hasBegun: shared.hasBegun,
  ask: (kind, asked, signal) =>
    ("odds" in asked && asked.odds !== undefined ? here : shared).ask(kind, asked, signal),
};

/**
 * Answers in this thread, without workers, which keep what they last computed from one test to the next; as in a server,
 * what follows from a text alone is worked out once for it.
 */
export const answersInTest = () => answers;
