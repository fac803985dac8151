import { createRequire } from "node:module";

/** The statistics library is a CommonJS module, whose names a loader of modules cannot tell. */
export const { jStat } = createRequire(import.meta.url)("jstat") as { jStat: unknown };
