import { readdirSync, readFileSync, rmSync } from "node:fs";
import { join } from "node:path";
import Handlebars from "handlebars";
import { parse } from "yaml";
import { agencyFile } from "../assumptions/agency.js";
import { assumptionFiles, readAssumptions } from "../assumptions/load.js";
import { readAtBuildFile, toReadAtBuild } from "../assumptions/read-at-build.js";
import { assumptionsFolder, viewsFolder } from "../report/document/assets.js";
import { compiledViewsFile, toKeep } from "../report/document/compiled-views.js";
import { writeWhole } from "./write-whole.js";

/** Keeps the project's own assumptions as read. Wrong ones are told when they are used, not here. */
function keepAssumptions(): void {
  rmSync(readAtBuildFile, { force: true });
  const files = new Map([...assumptionFiles(assumptionsFolder)].filter(([name]) => name !== agencyFile));
  try {
    const { alterations } = readAssumptions(files);
    writeWhole(readAtBuildFile, JSON.stringify(toReadAtBuild(files, parse, alterations)));
  } catch {
    // Read anew at each start.
  }
}

function keepViews(): void {
  const texts = [viewsFolder, join(viewsFolder, "partials")].flatMap((folder) =>
    readdirSync(folder)
      .filter((name) => name.endsWith(".hbs"))
      .map((name) => readFileSync(join(folder, name), "utf8")),
  );
  writeWhole(compiledViewsFile, JSON.stringify(toKeep(Handlebars, texts)));
}

keepAssumptions();
keepViews();
