import { join } from "node:path";
import { projectRoot } from "../project-root.js";

/** Where studies are kept: RAMP_AND_RACK_DATA, or the project's own folder. */
export const dataFolder = (): string => process.env.RAMP_AND_RACK_DATA ?? join(projectRoot, "data");
