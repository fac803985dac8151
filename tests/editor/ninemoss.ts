import { readFileSync } from "node:fs";
import { join } from "node:path";
import { examplesFolder } from "../../src/report/document/assets.js";

/** The text of the smaller example, which leaves nothing out of its report. */
export const ninemossText = readFileSync(join(examplesFolder, "ninemoss.yaml"), "utf8");
