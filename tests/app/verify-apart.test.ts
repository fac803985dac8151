import { deflateSync } from "node:zlib";
import { beforeAll, describe, expect, it } from "vitest";
import { keptOf } from "../../src/app/kept-reports.js";
import { verifyApart } from "../../src/app/verify-apart.js";
import type { MadeIssue } from "../../src/issue/make-issue.js";
import { storeConnection } from "../../src/store/connection.js";
import { issueStore } from "../../src/store/issues.js";
import { blanks, bodyOf, twice, withFile } from "../issue/hostile-files.js";
import { issued, onePagePrinter, passingKey } from "../issue/issued.js";
import { keptAs } from "../issue/keeping.js";
import { smallLakeText } from "../study/small-lake.js";

const key = passingKey();
const issues = issueStore(storeConnection(":memory:"));
let issue: MadeIssue;

beforeAll(async () => {
  issue = await issued(smallLakeText, onePagePrinter, key, { number: 1, supersedes: null });
  issues.keep(keptAs(issue));
});

const verify = (pdf: Uint8Array, settings?: Parameters<typeof verifyApart>[2]) =>
  verifyApart(pdf, keptOf(issues, key, pdf), settings);

describe("verification in a process of its own", () => {
  it("answers as it does here", async () => {
    const found = await verify(issue.pdf);
    expect(found, found.answer).toMatchObject({ standing: "issued here", stands: true, differences: [] });
  });

  it("refuses a file of 4 kB that unpacks to a hundred megabytes", async () => {
    const found = await verify(withFile(deflateSync(deflateSync(blanks(100))), twice));
    expect(found, found.answer).toMatchObject({ standing: "unknown", stands: false });
    expect(found.answer).toContain("bytes in one stream");
  });

  it("ends with its process, and not with this one, where a file takes all its memory", async () => {
    const numbers = bodyOf(`5 0 obj [${"0 ".repeat(10_000_000)}] endobj`);
    const found = await verify(numbers, { mostMegabytes: 1024 });
    expect(found, found.answer).toMatchObject({ standing: "unknown", stands: false });
    expect(found.sentences.join()).toContain("60 seconds and 1,024 MB");
  });

  it("ends when its time is up; what is kept here to the byte still stands", async () => {
    const found = await verify(issue.pdf, { longestSeconds: 0.01 });
    expect(found).toMatchObject({ standing: "issued here", stands: true });
    expect(found.sentences.join()).toContain("could not be computed again within 0.01 seconds");
    const other = Buffer.concat([issue.pdf, Buffer.from(" ")]);
    expect(await verify(other, { longestSeconds: 0.01 })).toMatchObject({
      standing: "unknown",
      stands: false,
    });
  });
});
