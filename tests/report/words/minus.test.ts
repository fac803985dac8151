import { describe, expect, it } from "vitest";
import { renderReport } from "../../../src/report/document/html.js";
import { linkedAssets } from "../../../src/report/document/render-page.js";
import { exampleRun } from "../runs.js";
import { sampleTold } from "../sample-odds.js";

const textsOf = (html: string) =>
  html
    .replace(/<(style|script)\b[\s\S]*?<\/\1>/g, "")
    .replace(/<[^>]+>/g, "\n")
    .split("\n");

describe("a minus in print", () => {
  it.each(["sorrel-bend", "ninemoss"] as const)(
    "is never a hyphen in %s, and is kept by its amount",
    (name) => {
      const texts = textsOf(renderReport(exampleRun(name), linkedAssets, {}, sampleTold(name)));
      expect(texts.filter((text) => /(?<![\w.])-(?=[\d\p{Sc}])/u.test(text))).toEqual([]);
      const signs = texts.filter((text) => /−(?=\u2060?\p{Sc})/u.test(text));
      expect(signs.length).toBeGreaterThan(10);
      expect(signs.filter((text) => /−\p{Sc}/u.test(text))).toEqual([]);
    },
  );
});
