import { expect, it } from "vitest";
import { enteredValue } from "../../src/editor/form-edits.js";

const numbers = (text: string) => enteredValue({ kind: "values", each: { kind: "number" } }, text);

it.each([
  ["1, 2.5, 3,000", [1, 2.5, 3000]],
  ["1,2,3", [1, 2, 3]],
  ["1; 2.5\n3,000", [1, 2.5, 3000]],
  ["1, 2; 3", [1, 2, 3]],
  // A decimal comma is for the reader of the study to refuse: 1 and 5 would shift all that follow.
  ["1,5; 2,5; 3", ["1,5", "2,5", 3]],
])("several values typed in one line: %j", (text, values) => {
  expect(numbers(text)).toEqual(values);
});
