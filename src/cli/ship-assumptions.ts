import { writeFileSync } from "node:fs";
import { parse } from "yaml";
import { assumptionFiles, readAssumptions } from "../assumptions/load.js";
import { recordOf, shippedFile } from "../assumptions/shipped.js";
import { contentsFile, contentsText } from "../assumptions/shipped-contents.js";
import { assumptionsFolder } from "../report/document/assets.js";

/** Writes what is shipped, and the record of it, for who changes the project's own assumptions. */
const files = assumptionFiles(assumptionsFolder);
const record = recordOf(readAssumptions(files));
writeFileSync(contentsFile, contentsText(files, parse));
writeFileSync(shippedFile, `${JSON.stringify(record, undefined, 2)}\n`);
console.log(`Assumptions ${record.digest}: ${Object.keys(record.parts).length} parts.`);
