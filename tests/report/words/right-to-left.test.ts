import { describe, expect, it } from "vitest";
import { isolateRightToLeft } from "../../../src/report/words/right-to-left.js";

describe("names that run from right to left", () => {
  it.each([
    // Expected by Unicode Standard Annex 9: a name is isolated, what follows it is not.
    ["<p>by “قمر” 30 years</p>", "<p>by “<bdi>قمر</bdi>” 30 years</p>"],
    ["<td>אגם הירח, תחנה 12</td><td>5</td>", "<td><bdi>אגם הירח, תחנה 12</bdi></td><td>5</td>"],
    ["<p>“שער 3” costs 40</p>", "<p>“<bdi>שער 3</bdi>” costs 40</p>"],
    ["<p>קמר 40 years</p>", "<p><bdi>קמר</bdi> 40 years</p>"],
  ])("are set apart in %s", (html, expected) => {
    expect(isolateRightToLeft(html)).toBe(expected);
  });

  it.each([
    '<p title="قمر">Moon</p>',
    "<title>قمر</title>",
    "<svg><text>قمر</text></svg>",
    '<script type="application/json">{"label":"قمر"}</script>',
    "<p>Łódź, Λίμνη, Озеро, 漢字</p>",
  ])("leave %s alone", (html) => {
    expect(isolateRightToLeft(html)).toBe(html);
  });
});
