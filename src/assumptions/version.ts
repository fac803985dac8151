import { readFileSync } from "node:fs";
import { join } from "node:path";
import { z } from "zod";
import { projectRoot } from "../project-root.js";
import { shippedRecord } from "./shipped.js";

const packageSchema = z.object({ version: z.string() });

/** Version of this program with the digest of the assumptions that it ships, as build metadata (semver.org 2.0.0, 10). */
export function programVersion(): string {
  const text = readFileSync(join(projectRoot, "package.json"), "utf8");
  return `${packageSchema.parse(JSON.parse(text)).version}+${shippedRecord().digest}`;
}
