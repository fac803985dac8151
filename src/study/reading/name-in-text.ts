import { isScalar, parseDocument, type Scalar } from "yaml";
import { forXml } from "./characters.js";
import { lineNestedTooDeep } from "./nesting.js";

/** Longest name that the schema allows. */
const longestName = 200;

/** The study's name in a possibly incomplete text; absent if it gives none. */
export function nameInText(text: string): string | undefined {
  const value = nameScalar(text)?.value;
  if (typeof value !== "string" || value.trim() === "") return undefined;
  return forXml(value.trim().slice(0, longestName));
}

/** The text with another study name and nothing else changed; unchanged if it gives no name. */
export function renamedText(text: string, name: string): string {
  const scalar = nameScalar(text);
  if (!scalar?.range || scalar.type?.startsWith("BLOCK")) return text;
  const [start, end] = scalar.range;
  return `${text.slice(0, start)}${JSON.stringify(name)}${text.slice(end)}`;
}

function nameScalar(text: string): Scalar | undefined {
  if (lineNestedTooDeep(text) !== undefined) return undefined;
  const document = parseDocument(text, { uniqueKeys: false, logLevel: "error", prettyErrors: false });
  const name = document.getIn(["study", "name"], true);
  return isScalar(name) ? name : undefined;
}
