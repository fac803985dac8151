import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import Handlebars from "handlebars";
import { describe, expect, it } from "vitest";
import { viewsFolder } from "../../../src/report/document/assets.js";
import { compiledViewsFile, templateOf, toKeep } from "../../../src/report/document/compiled-views.js";

const text = "<p>{{#each rows}}{{> row name=this}}{{/each}}{{last.name}}</p>";
const row = "<b>{{name}}</b>";

function filled(views: Readonly<Record<string, string>>): (view: object) => string {
  const engine = Handlebars.create();
  engine.registerPartial("row", templateOf(engine, row, views));
  return templateOf(engine, text, views);
}

describe("templates compiled at the build", () => {
  const kept = toKeep(Handlebars, [text, row]);

  it("fill in what those compiled when they are needed do, partials among them", () => {
    const view = { rows: ["a", "<c>"], last: { name: "d" } };
    expect(filled(kept)(view)).toBe("<p><b>a</b><b>&lt;c&gt;</b>d</p>");
    expect(filled({})(view)).toBe(filled(kept)(view));
  });

  it("refuse what a view has not, as those do", () => {
    expect(() => filled(kept)({ rows: [] })).toThrow('"name" not defined');
    expect(() => filled({})({ rows: [] })).toThrow('"name" not defined');
  });

  it("are used for a text to the letter alone", () => {
    const engine = Handlebars.create();
    const other = { [row]: "no code" };
    expect(templateOf(engine, `${row}!`, other)({ name: "a" })).toBe("<b>a</b>!");
    expect(() => templateOf(engine, row, other)({ name: "a" })).toThrow();
  });

  it("are those of every view as it was built", () => {
    const built = Object.keys(JSON.parse(readFileSync(compiledViewsFile, "utf8")) as object);
    const folders = [viewsFolder, join(viewsFolder, "partials")];
    const texts = folders.flatMap((folder) =>
      readdirSync(folder)
        .filter((name) => name.endsWith(".hbs"))
        .map((name) => readFileSync(join(folder, name), "utf8")),
    );
    expect(built.sort()).toEqual([...new Set(texts)].sort());
  });

  it("leave out a text that is no template, which tells its fault when it is filled in", () => {
    const broken = "{{#each rows}}";
    const views = toKeep(Handlebars, [broken, row]);
    expect(Object.keys(views)).toEqual([row]);
    expect(() => templateOf(Handlebars.create(), broken, views)({})).toThrow("Parse error");
  });
});
