import { beforeAll } from "vitest";
import { keptOf } from "../../src/app/kept-reports.js";
import type { MadeIssue } from "../../src/issue/make-issue.js";
import { recompute } from "../../src/issue/recompute.js";
import type { SigningKey } from "../../src/issue/signing-key.js";
import { verifyIssue } from "../../src/issue/verify.js";
import { storeConnection } from "../../src/store/connection.js";
import { issueStore } from "../../src/store/issues.js";
import { smallLakeText } from "../study/small-lake.js";
import { attempts } from "./forging.js";
import { issued, onePagePrinter, passingKey } from "./issued.js";
import { keptAs } from "./keeping.js";

const computed = new Map<string, ReturnType<typeof recompute>>();

/** Computes what is attached again, once for all files with the same attached: most alterations leave that as it is. */
const again: typeof recompute = (read, draw) => {
  const attached = JSON.stringify([read.content, read.record.engineVersion]);
  const known = computed.get(attached) ?? recompute(read, draw);
  computed.set(attached, known);
  return known;
};

/** A server that issued two reports of a small lake, and another, for the tests of a file. */
export function twoServers() {
  const [key, otherKey] = [passingKey(), passingKey()];
  const [here, elsewhere] = [
    issueStore(storeConnection(":memory:")),
    issueStore(storeConnection(":memory:")),
  ];
  const made: { first?: MadeIssue; issue?: MadeIssue } = {};
  beforeAll(async () => {
    made.first = await issued(smallLakeText, onePagePrinter, key, { number: 1, supersedes: null });
    made.issue = await issued(smallLakeText, onePagePrinter, key);
    for (const each of [made.first, made.issue]) here.keep(keptAs(each));
  });
  return {
    ...{ key, otherKey, elsewhere },
    first: () => there(made.first),
    issue: () => there(made.issue),
    onIssuingServer: (pdf: Uint8Array) => verifyIssue(pdf, { kept: keptOf(here, key, pdf), again }),
    onAnother: (pdf: Uint8Array) => verifyIssue(pdf, { kept: keptOf(elsewhere, otherKey, pdf), again }),
  };
}

function there(issue: MadeIssue | undefined): MadeIssue {
  if (!issue) throw new Error("no report is issued yet");
  return issue;
}

export const told = (verification: Awaited<ReturnType<typeof verifyIssue>>) =>
  [verification.answer, ...verification.sentences].join("\n");

export const fingerprint = async (of: SigningKey) => (await of.open()).fingerprint;

export const unsigned = (pdf: Uint8Array) => {
  const attempt = attempts.find(({ what }) => what === "its signature taken out");
  if (!attempt) throw new Error("no way to take the signature out");
  return attempt.forge(pdf);
};
