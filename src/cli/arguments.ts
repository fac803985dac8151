import { parseArgs } from "node:util";
import { PlainError } from "../plain-error.js";

/** The command line was not understood: for the person who typed it. */
export class UsageError extends PlainError {
  override readonly isToCorrect = true;
}

export type OptionValues = ReturnType<typeof readArguments>["values"];

/** @throws UsageError */
export function readArguments(args: readonly string[]) {
  try {
    return parseArgs({
      args: [...args],
      allowPositionals: true,
      options: {
        json: { type: "boolean" },
        set: { type: "string", multiple: true },
        from: { type: "string" },
        part: { type: "string" },
        month: { type: "string" },
        out: { type: "string" },
        paper: { type: "string" },
        futures: { type: "string" },
        seed: { type: "string" },
        workers: { type: "string" },
        "without-odds": { type: "boolean" },
        "board-part": { type: "boolean" },
        author: { type: "string" },
        note: { type: "string" },
        revision: { type: "string" },
        role: { type: "string" },
        example: { type: "boolean" },
        permanently: { type: "boolean" },
        schedule: { type: "string" },
        replace: { type: "boolean" },
        partly: { type: "boolean" },
        help: { type: "boolean", short: "h" },
      },
    });
  } catch (error) {
    throw new UsageError(error instanceof Error ? error.message : String(error));
  }
}

/** @throws UsageError where it is not given */
export function required(value: string | undefined, name: string): string {
  if (value === undefined) throw new UsageError(`${name} is missing.`);
  return value;
}

/** @throws UsageError */
export function paper(value: string | undefined): "letter" | "a4" | undefined {
  if (value === undefined || value === "letter" || value === "a4") return value;
  throw new UsageError(`--paper is "${value}"; allowed: letter or a4.`);
}

/** @throws UsageError */
export function whole(
  name: string,
  text: string | undefined,
  { least, most }: { readonly least: number; readonly most: number },
): number | undefined {
  if (text === undefined) return undefined;
  const value = Number(text);
  if (/^\d+$/.test(text) && value >= least && value <= most) return value;
  throw new UsageError(`${name} is "${text}"; allowed: a whole number from ${least} to ${most}.`);
}

/** What is set with `--set ID=VALUE`, each once. @throws UsageError */
export function assignments(
  given: readonly string[] = [],
): { readonly id: string; readonly value: string }[] {
  return given.map((text) => {
    const [id = "", ...value] = text.split("=");
    if (id.trim() !== "" && value.join("").trim() !== "")
      return { id: id.trim(), value: value.join("=").trim() };
    throw new UsageError(`--set is "${text}"; allowed: ID=VALUE, as --set arrival.shape=1.5.`);
  });
}
