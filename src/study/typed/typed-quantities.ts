import type { SpreadQuantity } from "../../units/spread.js";
import { asWritten } from "../format/as-written.js";
import { monthNames } from "../format/month-names.js";
import type { StudyDocument } from "../format/schema.js";
import { quantityName } from "../reading/ranged.js";
import { singleValues } from "./single-values.js";
import { type TypedId, typedIdOf } from "./typed-kinds.js";
import { type TypedEntries, type TypedRange, typedRange } from "./typed-range.js";

/** A quantity typed as one number that is not exact. */
interface TypedMember {
  readonly path: readonly PropertyKey[];
  readonly quantity: SpreadQuantity;
  readonly range: TypedRange;
}

/** Quantities that are off together: months of a year, and the same quantity of several options. */
export interface TypedQuantity {
  /** Its place by the ids of the enclosing groups, without option and month: "typed/boats/launches". */
  readonly id: string;
  readonly kind: TypedId;
  readonly name: string;
  readonly members: readonly [TypedMember, ...TypedMember[]];
}

/** All quantities of a study that are typed as one number and may be off, in document order. */
export function typedQuantities(document: StudyDocument, from: TypedEntries): TypedQuantity[] {
  const groups = new Map<string, { kind: TypedId; members: [TypedMember, ...TypedMember[]] }>();
  for (const { path, names, quantity } of singleValues(asWritten(document), [], [])) {
    if (quantity.exact) continue;
    const kind = typedIdOf(path, quantity.dimension);
    const range = kind && typedRange({ id: kind, ...quantity }, from);
    if (!kind || !range) continue;
    const id = ["typed", ...names.filter((name, level) => !(isMonth(name) || isOption(path, level)))].join(
      "/",
    );
    const known = groups.get(id);
    if (known) known.members.push({ path, quantity, range });
    else groups.set(id, { kind, members: [{ path, quantity, range }] });
  }
  return [...groups].map(([id, { kind, members }]) => ({
    ...{ id, kind, members },
    name: typedName(document, members),
  }));
}

const isMonth = (name: PropertyKey) => monthNames.some((month) => month === name);
const isOption = ([first]: readonly PropertyKey[], level: number) => first === "options" && level === 1;

function typedName(document: StudyDocument, members: readonly [TypedMember, ...TypedMember[]]): string {
  const [{ path }] = members;
  const place = path.filter((key) => !isMonth(key));
  const options = new Set(members.map((member) => member.path[1]));
  if (path[0] !== "options" || options.size === 1) return quantityName(document, place);
  return `${quantityName(document.options[Number(path[1])], place.slice(2))}, all options`;
}
