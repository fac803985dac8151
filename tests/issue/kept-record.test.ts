import { describe, expect, it } from "vitest";
import { readAttachments } from "../../src/issue/attachments.js";
import { readIssue } from "../../src/issue/read-issue.js";
import { recompute } from "../../src/issue/recompute.js";
import { recordDigest, takeRecord } from "../../src/study/records/at-hand.js";
import { absent, editedText } from "../study/example.js";
import { csvOf, datesFrom } from "../study/records.js";
import { issued, onePagePrinter, passingKey } from "./issued.js";

describe("a report on a study with a kept record", () => {
  it("carries the record, and is computed again from it", async () => {
    const days = datesFrom("2011-01-01", "2011-12-31");
    const record = csvOf(days, (date) => (date < "2011-10-01" ? 2135 : 2120), "date,elevation (ft)");
    const text = editedText([
      ["lake.drawdown", absent],
      ["lake.record", { kept: takeRecord(record), origin: "invented gauge" }],
    ]);
    const { pdf } = await issued(text, onePagePrinter, passingKey());
    const read = await readIssue(pdf);
    expect(read.attachmentsStand).toBe(true);
    const names = readAttachments(read.document).map(({ name }) => name);
    expect(names).toContain(`record-${recordDigest(record)}.csv`);
    const again = await recompute(read, undefined);
    expect(again.differences).toEqual([]);
    expect(again.figuresMatch).toBe(true);
  });
});
