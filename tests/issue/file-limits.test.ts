import { deflateSync } from "node:zlib";
import { PDFDocument } from "@cantoo/pdf-lib";
import { describe, expect, it } from "vitest";
import { checkFileLimits, FileLimitError, fileLimits } from "../../src/issue/file-limits.js";
import { readIssue } from "../../src/issue/read-issue.js";
import { blanks, bodyOf, twice, withFile, withStreams } from "./hostile-files.js";

describe("a file that holds more than a report", () => {
  it.each<[string, () => Uint8Array, string]>([
    [
      "one attachment of 100 MB",
      () => withFile(deflateSync(blanks(100)), "/FlateDecode"),
      "bytes in one stream",
    ],
    [
      "an attachment packed twice",
      () => withFile(deflateSync(deflateSync(blanks(1))), twice),
      "packed twice",
    ],
    [
      "the same, of 100 MB in 4 kB",
      () => withFile(deflateSync(deflateSync(blanks(100))), twice),
      "bytes in one stream",
    ],
    [
      "the same, under a name that says otherwise",
      () => withFile(deflateSync(blanks(100)), "/Fl#61teDecode"),
      "bytes in one stream",
    ],
    [
      "twelve streams of 30 MB",
      () => withStreams(12, deflateSync(blanks(30))),
      "268,435,456 bytes once unpacked",
    ],
    ["too many streams", () => withStreams(40_001, Buffer.alloc(1)), "40,000 streams"],
    ["too many objects", () => bodyOf("5 0 obj null endobj\n".repeat(400_000)), "400,000 objects"],
    [
      "too many objects packed together",
      () => bodyOf("5 0 obj << /Type /ObjStm /N 999999 /First 9 >> stream\nx\nendstream endobj"),
      "400,000 objects",
    ],
    ["more bytes than may be sent", () => Buffer.alloc(fileLimits.bytes + 1), "25,165,824 bytes"],
  ])("is refused before it is read: %s", async (_what, make, why) => {
    const file = make();
    expect(() => checkFileLimits(file)).toThrow(FileLimitError);
    await expect(readIssue(file)).rejects.toThrow(why);
  });

  it("is refused once its pages are counted", async () => {
    const document = await PDFDocument.create();
    for (let page = 0; page <= fileLimits.pages; page += 1) document.addPage();
    await expect(readIssue(await document.save())).rejects.toThrow("3,000 pages");
  });

  it("is refused before its attachments are unpacked, were they one and the same", async () => {
    const names = Array.from({ length: 33 }, (_each, index) => `(a${index}) 3 0 R`).join(" ");
    const file = withFile(deflateSync(blanks(30)), "/FlateDecode").toString("latin1");
    const many = Buffer.from(file.replace("(issue.json) 3 0 R", names), "latin1");
    await expect(readIssue(many)).rejects.toThrow("32 attachments");
  });
});

describe("limits", () => {
  it("count what is packed by what it comes to, to the byte", () => {
    const file = withStreams(3, deflateSync(blanks(1)));
    const megabytes = 3 * 1024 * 1024;
    expect(() => checkFileLimits(file, { ...fileLimits, unpackedAll: megabytes })).not.toThrow();
    expect(() => checkFileLimits(file, { ...fileLimits, unpackedAll: megabytes - 1 })).toThrow(
      "once unpacked",
    );
    expect(() => checkFileLimits(file, { ...fileLimits, streams: 2 })).toThrow("2 streams");
  });

  it("pass over what only looks packed", () => {
    const broken = Buffer.concat([Buffer.from([0x78, 0x9c]), Buffer.alloc(100, 0xff)]);
    expect(() => checkFileLimits(withStreams(5, broken))).not.toThrow();
  });
});
