import { counted } from "../../counted.js";
import type { StudyDocument } from "../../study/format/schema.js";
import type { Sensitivity } from "../../study/odds/odds.js";
import { valueAt } from "../../study/reading/problems.js";
import { quantityName } from "../../study/reading/ranged.js";
import { type TypicalPlace, typicalPlacesIn } from "../../study/short/typical-places.js";
import { percent } from "../words/format.js";
import { head, row, type TableView } from "../words/view-types.js";

interface TypicalView {
  readonly text: string;
  readonly table: TableView;
}

/** The typical values that a study's author has not replaced, with how much of the answer rests on them. */
export function typicalView(
  document: StudyDocument,
  matters: Sensitivity | undefined,
): TypicalView | undefined {
  const places = typicalPlacesIn(document, document.study.typical);
  if (places.length === 0) return undefined;
  const share = matters?.typicalShare;
  const part = share === undefined ? "" : ` They account for ${percent(share)} of what moves the answer.`;
  const items = new Map<string, string[]>();
  for (const place of places) {
    const owner = ownerOf(document, place);
    items.set(owner, [...(items.get(owner) ?? []), placeText(document, place, owner)]);
  }
  return {
    text: `This is a first estimate: ${counted(places.length, "value")} of the study ${places.length === 1 ? "is" : "are"} typical and nobody’s own, with wide ranges in their place.${part}`,
    table: {
      id: "table-typical",
      caption: "Typical values, not the author’s",
      head: head("Of", "Value, or low to likeliest to high"),
      rows: [...items].map(([owner, texts]) => row(owner, `${texts.join("; ")}.`)),
    },
  };
}

const sections: Readonly<Record<string, string>> = { boats: "Boats", money: "Money" };

/** The structure, option or class in which a place stands, or else the part of the study. */
function ownerOf(document: StudyDocument, { path }: TypicalPlace): string {
  const index = path.findIndex((_key, place) => nameAt(document, path, place) !== undefined);
  return nameAt(document, path, index) ?? sections[String(path[0])] ?? String(path[0]);
}

function nameAt(document: StudyDocument, path: TypicalPlace["path"], index: number): string | undefined {
  const name = index < 0 ? undefined : valueAt(document, [...path.slice(0, index + 1), "name"]);
  return typeof name === "string" ? name : undefined;
}

function placeText(document: StudyDocument, { path }: TypicalPlace, owner: string): string {
  const words = quantityName(document, path);
  const ending = ` of ${owner}`;
  return `${words.endsWith(ending) ? words.slice(0, -ending.length) : words} ${valueText(valueAt(document, path))}`;
}

function valueText(value: unknown): string {
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (typeof value !== "object" || value === null) return String(value);
  if ("text" in value && typeof value.text === "string") return value.text;
  const values: readonly unknown[] = Object.values(value);
  const written = [...new Set(values.map(valueText))];
  return written.length === 1 ? (written[0] ?? "") : `(${counted(values.length, "value")})`;
}
