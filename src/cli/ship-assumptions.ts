import { writeFileSync } from "node:fs";
import { loadAssumptions } from "../assumptions/load.js";
import { recordOf, shippedFile } from "../assumptions/shipped.js";
import { assumptionsFolder } from "../report/document/assets.js";

/** Writes the record of what is shipped, for who changes the project's own assumptions. */
const record = recordOf(loadAssumptions(assumptionsFolder));
writeFileSync(shippedFile, `${JSON.stringify(record, undefined, 2)}\n`);
console.log(`Assumptions ${record.digest}: ${Object.keys(record.parts).length} parts.`);
