import { rmSync, writeFileSync } from "node:fs";
import { parse } from "yaml";
import { agencyFile } from "../assumptions/agency.js";
import { assumptionFiles, readAssumptions } from "../assumptions/load.js";
import { readAtBuildFile, toReadAtBuild } from "../assumptions/read-at-build.js";
import { assumptionsFolder } from "../report/document/assets.js";

/** Keeps the project's own assumptions as read. Wrong ones are told when they are used, not here. */
rmSync(readAtBuildFile, { force: true });
const files = new Map([...assumptionFiles(assumptionsFolder)].filter(([name]) => name !== agencyFile));
try {
  const { alterations } = readAssumptions(files);
  writeFileSync(readAtBuildFile, JSON.stringify(toReadAtBuild(files, parse, alterations)));
} catch {
  // Read anew at each start.
}
