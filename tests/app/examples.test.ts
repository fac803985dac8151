import { expect, it } from "vitest";
import { readExamples } from "../../src/app/examples.js";
import { readStudyText } from "../../src/study/reading/read.js";

it.each(readExamples())("$id is listed under the name that its text gives", ({ name, text, fileName }) => {
  expect(name).toBe(readStudyText(text, fileName).study.name);
});
