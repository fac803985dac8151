import { readFileSync } from "node:fs";
import { z } from "zod";
import { shippedRecord } from "./shipped.js";

const packageSchema = z.object({ version: z.string() });

/** Version of this program with the digest of the assumptions that it ships, as build metadata (semver.org 2.0.0, 10). */
export function programVersion(): string {
  const text = readFileSync(new URL("../../package.json", import.meta.url), "utf8");
  return `${packageSchema.parse(JSON.parse(text)).version}+${shippedRecord().digest}`;
}
