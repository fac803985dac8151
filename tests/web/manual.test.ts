import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { commandCalled } from "../../src/cli/command-table.js";
import { projectRoot } from "../../src/project-root.js";
import { viewsFolder } from "../../src/report/document/assets.js";
import { serving } from "./serving.js";

const files = readdirSync(join(viewsFolder, "help")).filter((file) => file.endsWith(".md"));
const textOf = (file: string) => readFileSync(join(viewsFolder, "help", file), "utf8");

describe("help for whoever runs the server or writes files", () => {
  it.each(files)("%s is a page of the server that the list of studies leads to", async (file) => {
    const { ask } = await serving();
    const address = `/help/${file.replace(".md", "")}`;
    expect(await (await ask("/")).text()).toContain(`href="${address}"`);
    const response = await ask(address);
    expect(response.status).toBe(200);
    const [heading = ""] = textOf(file).split("\n");
    expect(await response.text()).toContain(`<h1>${heading.replace("# ", "")}</h1>`);
  });

  it("names only commands that there are", () => {
    const texts = [...files.map(textOf), readFileSync(join(projectRoot, "README.md"), "utf8")].join("\n");
    const named = [...texts.matchAll(/npm run ramp-and-rack -- ([a-z][a-z-]*)/g)].map(
      ([, name = ""]) => name,
    );
    expect(named.length).toBeGreaterThan(15);
    for (const name of named) expect(() => commandCalled(name)).not.toThrow();
  });
});
