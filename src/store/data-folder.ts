import { join } from "node:path";
import { fileURLToPath } from "node:url";

/** Where studies are kept: RAMP_AND_RACK_DATA, or the project's own folder. */
export const dataFolder = (): string =>
  process.env.RAMP_AND_RACK_DATA ?? join(fileURLToPath(new URL("../..", import.meta.url)), "data");
