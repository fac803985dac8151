import type { NamedField } from "./fields.js";
import { childOf } from "./form-values.js";

/** Other ways of giving the same thing, each by fields of its own in one group: a schedule, or a record. */
export const waysAmong = (fields: readonly NamedField[]): string[] => [
  ...new Set(fields.flatMap(({ way }) => (way === undefined ? [] : [way]))),
];

/** The way in which a group gives it; the first of several, undefined where it has none. */
export const wayGiven = (fields: readonly NamedField[], value: unknown): string | undefined =>
  fields.find(({ way, key }) => way !== undefined && childOf(value, key) !== undefined)?.way;

/** Fields of a way, and those of others that the group has as well, which contradict it. */
export const fieldsShown = (fields: readonly NamedField[], value: unknown): NamedField[] => {
  const given = wayGiven(fields, value);
  return fields.filter(
    ({ way, key }) => way !== undefined && (way === given || childOf(value, key) !== undefined),
  );
};
