import { readFileSync } from "node:fs";
import { join } from "node:path";
import { z } from "zod";
import { projectRoot } from "../report/assets.js";

const packageSchema = z.object({ version: z.string() });

/** Version of this program. */
export function engineVersion(): string {
  const text = readFileSync(join(projectRoot, "package.json"), "utf8");
  return packageSchema.parse(JSON.parse(text)).version;
}
