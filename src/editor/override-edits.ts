import { valueAt } from "../study/reading/problems.js";
import { type Edit, edited, rawOf } from "./study-text.js";

/** An own value for an assumption, as a study has it. */
export interface WrittenOverride {
  readonly id: string;
  readonly value: string | number;
  readonly reason: string;
}

/** The text with an own value set or replaced. @throws InputError if the text cannot be read */
export const withOverride = (text: string, name: string, override: WrittenOverride): string =>
  withOverrides(text, name, [override]);

/** The text with own values set or replaced. @throws InputError if the text cannot be read */
export const withOverrides = (text: string, name: string, overrides: readonly WrittenOverride[]): string =>
  edited(text, overrideEdits(rawOf(text, name), overrides));

/** Changes of a study's text that set or replace own values. */
export function overrideEdits(document: unknown, overrides: readonly WrittenOverride[]): Edit[] {
  const ids = idsIn(document);
  const added = overrides.filter(({ id }) => !ids.includes(id));
  return overrides.flatMap(({ id, value, reason }): Edit[] => {
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
}

/** The text without an assumption's own values. @throws InputError if the text cannot be read */
export function withoutOverride(text: string, name: string, id: string): string {
  const ids = idsIn(rawOf(text, name));
  if (ids.every((each) => each === id)) {
    return ids.length > 0 ? edited(text, [{ at: ["overrides"], remove: true }]) : text;
  }
  const removals: Edit[] = ids.flatMap((each, index) =>
    each === id ? [{ at: ["overrides", index], remove: true }] : [],
  );
  return edited(text, removals.reverse());
}

/** Ids of a study's own values in order; undefined for one without an id. */
function idsIn(document: unknown): unknown[] {
  const overrides = valueAt(document, ["overrides"]);
  return Array.isArray(overrides) ? overrides.map((each) => valueAt(each, ["id"])) : [];
}
