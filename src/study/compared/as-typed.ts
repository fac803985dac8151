import { isByMonth, isQuantity } from "./pairs.js";

const longest = 160;

/** A value as written, on one line, cut if too long. */
export function asTyped(value: unknown): string {
  const text = inWords(value);
  return text.length > longest ? `${text.slice(0, longest - 1).trimEnd()}…` : text;
}

function inWords(value: unknown): string {
  if (typeof value === "string") return value.includes("\n") ? `${linesOf(value).length} lines` : value;
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (typeof value !== "object" || value === null) return String(value);
  if (Array.isArray(value)) return value.length === 0 ? "none" : value.map(inWords).join("; ");
  if (isQuantity(value)) return String(value.text);
  const name: unknown = Reflect.get(value, "name");
  if (typeof name === "string") return `“${name}”`;
  return Object.entries(value)
    .map(([key, item]) => `${wordsOf(key)} ${inWords(item)}`)
    .join(", ");
}

/** Both values of a difference; of monthly tables and long texts only the parts that differ. */
export function bothTyped(left: unknown, right: unknown): { left: string; right: string } {
  const lines = typeof left === "string" && typeof right === "string" && linesThatDiffer(left, right);
  if (lines) return lines;
  const months = monthsThatDiffer(left, right);
  return months
    ? { left: asTyped(months.left), right: asTyped(months.right) }
    : { left: asTyped(left), right: asTyped(right) };
}

/** A key of the format in words: "clearSpacing" is "clear spacing". */
const wordsOf = (key: string): string => key.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);

const linesOf = (text: string) => text.trim().split(/\r?\n/);

function linesThatDiffer(left: string, right: string): { left: string; right: string } | undefined {
  if (!left.includes("\n") && !right.includes("\n")) return undefined;
  const [leftLines, rightLines] = [linesOf(left), linesOf(right)];
  const first = leftLines.findIndex((line, index) => line !== rightLines[index]);
  const place = first < 0 ? leftLines.length : first;
  const lineText = (lines: readonly string[]) =>
    `${lines.length} lines; line ${place + 1}: ${lines[place] ?? "none"}`;
  return { left: lineText(leftLines), right: lineText(rightLines) };
}

function monthsThatDiffer(left: unknown, right: unknown): { left: object; right: object } | undefined {
  const areTables = [left, right].every(
    (value) => typeof value === "object" && value !== null && isByMonth(value) && !("all" in value),
  );
  if (!areTables) return undefined;
  const differing = Object.entries(Object(left)).filter(
    ([month, value]) => inWords(value) !== inWords(Reflect.get(Object(right), month)),
  );
  return {
    left: Object.fromEntries(differing),
    right: Object.fromEntries(differing.map(([month]) => [month, Reflect.get(Object(right), month)])),
  };
}
