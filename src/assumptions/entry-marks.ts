import type { Assumption } from "./entry.js";

/** A value in money. */
export const isPrice = ({ unit }: Pick<Assumption, "unit">): boolean => unit.startsWith("$");

/** A value that somebody judged, for want of a source. */
export const isJudged = ({ basis }: Pick<Assumption, "basis">): boolean => basis === "judged";
