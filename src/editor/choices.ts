import type { NamedField, Offer } from "./fields.js";
import type { Choice } from "./form-node.js";
import { childOf, itemsOf, shownText } from "./form-values.js";
import { titleOf } from "./multiple-choice.js";

export function unitChoices(offered: readonly string[], chosen: string): Choice[] {
  if (offered.every((unit) => unit === "")) return [];
  return [...offered, ""].map((unit) => ({
    value: unit,
    label: printed(unit),
    chosen: unit === chosen,
  }));
}

/** A unit in print: "degF" is "°F", "m3/s" is "m³/s". */
const printed = (unit: string) =>
  unit === ""
    ? "as typed"
    : unit
        .replaceAll("deg", "°")
        .replace(/^u(?=S)/, "µ")
        .replace(/(?<=[a-z])2/g, "²")
        .replace(/(?<=[a-z])3/g, "³")
        .replace(/^°$/, "degrees");

export const yesOrNo: Offer = { values: ["true", "false"], titles: { true: "Yes", false: "No" } };

export function choicesOf(offer: Offer, value: unknown, { required, usual }: NamedField): Choice[] {
  const { values } = offer;
  const chosen = shownText(value);
  const word = (each: string) => titleOf(offer, each);
  const none = usual === "" ? (required ? "Choose" : "Not stated") : `Usual: ${word(usual)}`;
  return [
    { value: "", label: none, chosen: chosen === "" },
    ...values.map((each) => ({ value: each, label: word(each), chosen: each === chosen })),
    ...(chosen === "" || values.includes(chosen) ? [] : [{ value: chosen, label: chosen, chosen: true }]),
  ];
}

export function referenceChoices(to: string, value: unknown, named: NamedField, document: unknown): Choice[] {
  const chosen = shownText(value);
  const known = namedThings(to, document);
  const isKnown = chosen === "" || known.some(({ id }) => id === chosen);
  return [
    { value: "", label: named.required ? "Choose" : "Not stated", chosen: chosen === "" },
    ...known.map(({ id, name }) => ({ value: id, label: name, chosen: id === chosen })),
    ...(isKnown ? [] : [{ value: chosen, label: `${chosen} (not in the list)`, chosen: true }]),
  ];
}

/** Ids and names listed at a place such as "money.bearers". */
export function namedThings(to: string, document: unknown): { id: string; name: string }[] {
  const list = to.split(".").reduce<unknown>((found, key) => childOf(found, key), document);
  return itemsOf(list).flatMap((item) => {
    const id = childOf(item, "id");
    return typeof id === "string" ? [{ id, name: shownText(childOf(item, "name")) || id }] : [];
  });
}

export const waysOf = (
  ways: readonly { value: string; label: string }[],
  chosen: string | undefined,
): Choice[] => [
  ...(chosen === undefined ? [{ value: "", label: "Choose", chosen: true }] : []),
  ...ways.map(({ value, label }) => ({ value, label, chosen: value === chosen })),
];
