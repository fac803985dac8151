import { expect, it } from "vitest";
import { fileOrigin } from "../../src/editor/files/file-origin.js";
import { recordEdits } from "../../src/editor/files/record-edits.js";
import { sampleEdits } from "../../src/editor/files/sample-edits.js";
import { levelExportSchema, sampleLogSchema } from "../../src/study/format/export-schema.js";
import { shortText } from "../../src/study/format/fields.js";

it.each([
  ["nothing", undefined, false, undefined, "File b.csv"],
  ["a file that is replaced", "File a.csv", false, undefined, "File b.csv"],
  ["a file of which seasons stay", "File a.csv", true, undefined, "File a.csv and b.csv"],
  ["the same file among others", "File a.csv and b.csv", true, undefined, "File a.csv and b.csv"],
  [
    "a long name of which seasons stay",
    `File ${"a".repeat(195)}`,
    true,
    undefined,
    "File b.csv and those before",
  ],
  ["what its author told", "station sheets", true, undefined, "station sheets"],
  ["a file, and its author tells it now", "File a.csv", true, "station sheets", "station sheets"],
])("says where values come from where the study had %s", (_what, before, isAdded, told, origin) => {
  expect(fileOrigin({ told, before, fileName: "b.csv", isAdded })).toBe(origin);
});

it("names a file once of which an earlier version kept the whole long name", () => {
  const fileName = `${"f".repeat(100)}.csv`;
  const origin = fileOrigin({ told: undefined, before: `File ${fileName}`, fileName, isAdded: true });
  expect(origin).toBe(`File ${"f".repeat(59)}…`);
});

it("keeps texts that a study can have, whatever the length of a file's name and of what stood before", () => {
  const fileName = `${"f".repeat(240)}.csv`;
  const monitoring = { settlementPlates: 12, origin: "o".repeat(200) };
  const counts = { planktonTows: 30, settlementPlates: 0, searches: 0, ednaSamples: 0 };
  const { edits } = sampleEdits(
    { options: [{ id: "none", monitoring }] },
    {
      ...{ years: [{ year: 2025, counts, other: 0, places: 1, mussels: 0, unconfirmed: 0 }] },
      ...{ clean: [{ from: 2025, to: 2025 }], under: undefined, watching: ["none"] },
      ...{ mapping: sampleLogSchema.parse({ date: "d", result: "r" }), fileName, origin: undefined },
    },
  );
  const mapping = levelExportSchema.parse({ date: "d", level: "l" });
  const all = [...edits, ...recordEdits({}, ["lake"], { digest: "0", fileName, mapping })];
  const texts = all.flatMap((each) => ("value" in each ? [each.value].flat() : []));
  const kept = texts.map((each) => (typeof each === "object" ? Object(each).origin : each));
  const long = kept.filter((each) => typeof each === "string" && each.includes("f…"));
  expect(long).toHaveLength(5);
  for (const each of long) expect(shortText.parse(each)).toBe(each);
});
