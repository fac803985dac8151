import { createHash } from "node:crypto";
import { configure } from "safe-stable-stringify";

const sorted = configure({ deterministic: true, strict: true });

/** JSON with sorted keys: the same content gives the same text. */
export function stableJson(content: unknown): string {
  const text = sorted(content);
  if (text === undefined) throw new Error("nothing that JSON can hold");
  return text;
}

export const sha256 = (content: string | Uint8Array): string =>
  createHash("sha256").update(content).digest("hex");
