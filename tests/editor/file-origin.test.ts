import { expect, it } from "vitest";
import { fileOrigin } from "../../src/editor/files/file-origin.js";

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
