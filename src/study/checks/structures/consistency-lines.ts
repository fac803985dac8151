import type { StructureDocument } from "../../format/structure-schema.js";
import type { Contradiction } from "../../reading/contradiction.js";
import type { SoundParts } from "../sound-parts.js";

type LineDocument = Extract<StructureDocument, { kind: "hydropower" }>["coolingWater"];

/** The small line of a structure, with its place below it. */
function lineOf(
  structure: StructureDocument,
): { line: LineDocument; path: readonly PropertyKey[] } | undefined {
  if ("coolingWater" in structure) return { line: structure.coolingWater, path: ["coolingWater"] };
  return "coolers" in structure ? { line: structure, path: [] } : undefined;
}

/** Tubes and orifices that fit into their line, and structures upstream that there are. */
export function lineProblems({ structures }: SoundParts): Contradiction[] {
  const ids = structures.flatMap(({ value }) => (hasWalls(value) ? [value.id] : []));
  return structures.flatMap(({ index, value }) => {
    const found = lineOf(value);
    if (!found) return [];
    const { line, path } = found;
    return [...boreProblems(line), ...upstreamProblems(line, { own: value.id, ids })].map((problem) => ({
      ...problem,
      path: ["structures", index, ...path, ...problem.path],
    }));
  });
}

const hasWalls = (structure: StructureDocument) =>
  "penstock" in structure || "coolers" in structure || ("conduit" in structure && "rack" in structure);

function boreProblems({ coolers, orifices, diameter }: LineDocument): Contradiction[] {
  const narrow = (list: "coolers" | "orifices", what: string) =>
    (list === "coolers" ? coolers : orifices).flatMap(({ bore }, index) =>
      bore.value < diameter.value
        ? []
        : [
            {
              path: [list, index, "bore"],
              found: bore.text,
              allowed: `${what} narrower than its line, ${diameter.text}`,
              remedy: "Correct the bore, the line's diameter or the unit of either.",
            },
          ],
    );
  return [...narrow("coolers", "a tube"), ...narrow("orifices", "an orifice")];
}

function upstreamProblems(
  { upstream }: LineDocument,
  { own, ids }: { readonly own: string; readonly ids: readonly string[] },
): Contradiction[] {
  if (upstream === undefined || (upstream !== own && ids.includes(upstream))) return [];
  const others = ids.filter((id) => id !== own);
  return [
    {
      path: ["upstream"],
      found: upstream === own ? `"${upstream}", the structure itself` : `"${upstream}"`,
      allowed: `the id of another intake, power plant or service line: ${others.join(", ") || "there is none yet"}`,
      remedy: "Name the structure that the line is tapped from, or leave this out.",
    },
  ];
}
