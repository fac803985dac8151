import type { Pipe } from "./inputs.js";
import type { SmallLine } from "./small-line.js";

/** What drives the water of a pipe: a head that is entered, the lake above a level, or a pump. */
export type Drive =
  | {
      readonly by: "head";
      readonly head: number;
      /** Where the head stands below the structure. */
      readonly at: readonly string[];
      /** True where the structure has a check of its own of what is delivered. */
      readonly isDeliveryChecked: boolean;
    }
  | {
      readonly by: "lake";
      readonly lowerLevel: number;
      readonly lowerName: "outlet" | "tailwater";
      /** True where a clean pipe may deliver less than the largest flow in months that are dry. */
      readonly mayFallShort: boolean;
    }
  | { readonly by: "pump" };

/** A pipe of a structure with the largest flow through it. */
export interface PipePart {
  /** That of its component. */
  readonly name: string;
  /** What its velocity is usual for: lines of small bore are run otherwise than conduits and penstocks. */
  readonly size: "conduit" | "penstock" | "line";
  /** Where it stands below its structure; nowhere else where the structure is the pipe. */
  readonly at: readonly string[];
  readonly pipe: Pipe;
  readonly flow: number;
  readonly drive: Drive;
  /** Set where it is a line of small bore that serves something, with how many there are alike. */
  readonly line?: { readonly line: SmallLine; readonly count: number } | undefined;
}

/** A line of small bore with its entered head: the part of a structure, or the structure itself. */
export function linePart(
  name: string,
  at: readonly string[],
  { line, count }: NonNullable<PipePart["line"]>,
): PipePart {
  const { requiredFlow, availableHead } = line;
  const place = [...at, "availableHead"];
  const drive = { by: "head", head: availableHead, at: place, isDeliveryChecked: false } as const;
  return { name, size: "line", at, pipe: line, flow: requiredFlow, drive, line: { line, count } };
}
