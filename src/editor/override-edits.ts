import { valueAt } from "../study/reading/problems.js";
import { type Edit, edited, rawOf } from "./study-text.js";

/** An own value for an assumption, as a study has it. */
interface WrittenOverride {
  readonly id: string;
  readonly value: string | number;
  readonly reason: string;
}

/** The text with an own value set or replaced. @throws InputError if the text cannot be read */
export const withOverride = (text: string, name: string, override: WrittenOverride): string =>
  withOverrides(text, name, [override]);

/** The text with own values set or replaced. @throws InputError if the text cannot be read */
export function withOverrides(text: string, name: string, overrides: readonly WrittenOverride[]): string {
  const ids = idsIn(text, name);
  const added = overrides.filter(({ id }) => !ids.includes(id));
  const edits = overrides.flatMap(({ id, value, reason }): Edit[] => {
    const place = ids.indexOf(id);
    if (place < 0) {
      const index = ids.length + added.findIndex((each) => each.id === id);
      return [{ at: ["overrides", index], value: { id, value, reason } }];
    }
    return [
      { at: ["overrides", place, "value"], value },
      { at: ["overrides", place, "reason"], value: reason },
    ];
  });
  return edited(text, edits);
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
