import { expect, it } from "vitest";
import { tableText } from "../../src/cli/table-text.js";
import { head, num, row } from "../../src/report/words/view-types.js";

it("a name of 140 letters takes several lines of a terminal's table, with nothing cut and numbers in their column", () => {
  const name = `Full-season stations ${"at every ramp and gate ".repeat(5)}${"x".repeat(4)}`;
  expect(name.length).toBe(140);
  const [, first = "", ...lines] = tableText({
    id: "table-long",
    caption: "Long names",
    head: head("Option", num("Cost a year")),
    rows: [row(name, num("$1,000")), row("x".repeat(140), num("$2,000"))],
  }).split("\n");
  expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(first.length);
  const words = lines
    .join(" ")
    .replaceAll(/\$\d,000/g, " ")
    .split(/\s+/)
    .join(" ");
  expect(words).toContain(name.trim());
  expect(lines.join("").match(/x/g)?.length).toBe(144);
  for (const line of lines.filter((each) => each.includes("$"))) expect(line.length).toBe(first.length);
});
