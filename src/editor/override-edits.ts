import { valueAt } from "../study/reading/problems.js";
import { type Edit, edited, rawOf } from "./study-text.js";

/** An own value for an assumption, as a study has it. */
interface WrittenOverride {
  readonly id: string;
  readonly value: string | number;
  readonly reason: string;
}

/** The text with an own value set or replaced. @throws InputError if the text cannot be read */
export function withOverride(text: string, name: string, override: WrittenOverride): string {
  const ids = idsIn(text, name);
  const place = ids.indexOf(override.id);
  if (place < 0) return edited(text, [{ at: ["overrides", ids.length], value: { ...override } }]);
  return edited(text, [
    { at: ["overrides", place, "value"], value: override.value },
    { at: ["overrides", place, "reason"], value: override.reason },
  ]);
}

/** The text without an assumption's own values. @throws InputError if the text cannot be read */
export function withoutOverride(text: string, name: string, id: string): string {
  const ids = idsIn(text, name);
  if (ids.every((each) => each === id)) {
    return ids.length > 0 ? edited(text, [{ at: ["overrides"], remove: true }]) : text;
  }
  const removals: Edit[] = ids.flatMap((each, index) =>
    each === id ? [{ at: ["overrides", index], remove: true }] : [],
  );
  return edited(text, removals.reverse());
}

/** Ids of a study's own values in order; undefined for one without an id. */
function idsIn(text: string, name: string): unknown[] {
  const overrides = valueAt(rawOf(text, name), ["overrides"]);
  return Array.isArray(overrides) ? overrides.map((each) => valueAt(each, ["id"])) : [];
}
