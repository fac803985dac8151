import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { viewsFolder } from "../../../src/report/document/assets.js";
import { colours } from "../../../src/report/words/palette.js";

const sheet = (name: string) => readFileSync(join(viewsFolder, name), "utf8");

describe("colours, sizes of type and distances", () => {
  it("are stated in one file: other style sheets hold no colour of their own", () => {
    const others = readdirSync(viewsFolder).filter((name) => name.endsWith(".css") && name !== "tokens.css");
    expect(others).toContain("style.css");
    for (const name of others) expect(sheet(name), name).not.toMatch(/#[0-9a-f]{3,8}\b|rgba?\(/i);
  });

  it("are all defined that a style sheet uses", () => {
    const defined = new Set([...sheet("tokens.css").matchAll(/(--[\w-]+):/g)].map(([, name]) => name));
    for (const name of ["style.css", "workbench.css"]) {
      for (const [, used] of sheet(name).matchAll(/var\((--[\w-]+)\)/g)) expect(defined).toContain(used);
    }
  });

  // WCAG 2.2, success criteria 1.4.3 (text 4.5 : 1) and 1.4.11 (marks 3 : 1); formula of relative luminance there.
  it.each([
    ["ink", 4.5],
    ["water", 4.5],
    ["brick", 4.5],
    ["shell", 3],
  ] as const)("%s stands out from paper by at least %s : 1", (name, least) => {
    expect(contrast(colours[name], colours.paper)).toBeGreaterThanOrEqual(least);
  });
});

function contrast(one: string, other: string): number {
  const [dark = 0, light = 0] = [luminance(one), luminance(other)].sort((a, b) => a - b);
  return (light + 0.05) / (dark + 0.05);
}

function luminance(hex: string): number {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5]
    .map((at) => Number.parseInt(hex.slice(at, at + 2), 16) / 255)
    .map((part) => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4));
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}
