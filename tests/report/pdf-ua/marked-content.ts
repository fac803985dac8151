/** What a page draws that no reader is told to read or to pass over, and marks that stand where they may not. */
export interface MarkedContent {
  /** Painting operators outside any mark, with what stands before them. */
  readonly unmarked: readonly string[];
  readonly artifactInTagged: number;
  readonly taggedInArtifact: number;
  readonly isBalanced: boolean;
}

/** Strings, dictionaries and names are passed over, so that no operator is seen in them. */
const tokens =
  /\((?:\\[\s\S]|[^\\()])*\)|<<(?:[^<>]|<[\da-fA-F\s]*>)*>>|<[\da-fA-F\s]*>|\/[^\s<>()[\]{}/%]*|[A-Za-z'"][A-Za-z0-9*'"]*/g;

/** Operators that draw (ISO 32000-1, annex A; read in general descriptions, from memory). */
const painting = new Set([
  "f",
  "F",
  "f*",
  "S",
  "s",
  "B",
  "B*",
  "b",
  "b*",
  "Tj",
  "TJ",
  "'",
  '"',
  "Do",
  "sh",
  "EI",
]);

/** Marks of one page's drawing. */
export function markedContent(drawing: string): MarkedContent {
  const open: string[] = [];
  const unmarked: string[] = [];
  let [artifactInTagged, taggedInArtifact, least] = [0, 0, 0];
  let [before, beforeLast] = ["", ""];
  for (const { 0: token, index } of drawing.matchAll(tokens)) {
    if (token === "BDC" || token === "BMC") {
      const tag = token === "BMC" ? before : beforeLast;
      const isArtifact = tag === "/Artifact";
      if (isArtifact && open.some((each) => each === "tagged")) artifactInTagged += 1;
      const isTagged = token === "BDC" && /\/MCID\b/.test(before);
      if (isTagged && open.includes("/Artifact")) taggedInArtifact += 1;
      open.push(isArtifact ? "/Artifact" : isTagged ? "tagged" : "other");
    } else if (token === "EMC") {
      if (open.pop() === undefined) least -= 1;
    } else if (painting.has(token) && !open.some((each) => each !== "other")) {
      unmarked.push(drawing.slice(Math.max(0, index - 60), index + token.length));
    }
    [beforeLast, before] = [before, token];
  }
  return { unmarked, artifactInTagged, taggedInArtifact, isBalanced: open.length === 0 && least === 0 };
}
