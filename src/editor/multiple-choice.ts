import type { Offer } from "./fields.js";
import type { Choice } from "./form-node.js";
import { nameOf, type Posted, shownText } from "./form-values.js";
import { labelOf } from "./labels.js";
import type { Edit, Place } from "./study-text.js";

export const titleOf = ({ titles }: Offer, value: string): string => titles[value] ?? labelOf(value);

/** A check box for each value offered, and for any other in the study. */
export function boxesOf(offer: Offer, value: unknown): Choice[] {
  const given = new Set(givenItems(value).map(shownText));
  const others = [...given].filter((text) => !offer.values.includes(text));
  return [
    ...offer.values.map((each) => ({ value: each, label: titleOf(offer, each), chosen: given.has(each) })),
    ...others.map((text) => ({
      value: text,
      label: (Object.hasOwn(offer.titles, text) && offer.titles[text]) || `${text} (not in the list)`,
      chosen: true,
    })),
  ];
}

/** Edits for boxes ticked or cleared. Remaining items keep their text and order. */
export function editsOfBoxes(offer: Offer, at: Place, value: unknown, posted: Posted): Edit[] {
  const ticked = new Set<string>();
  let isChanged = false;
  for (const box of boxesOf(offer, value)) {
    const sent = posted[`${nameOf(at)}#${box.value}`];
    const isTicked = sent === undefined ? box.chosen : sent !== "";
    if (isTicked) ticked.add(box.value);
    isChanged ||= isTicked !== box.chosen;
  }
  if (!isChanged) return [];
  const kept = givenItems(value).filter((item) => ticked.has(shownText(item)));
  const before = new Set(kept.map(shownText));
  const items = [...kept, ...[...ticked].filter((text) => !before.has(text))];
  return [items.length === 0 ? { at, remove: true } : { at, value: items }];
}

function givenItems(value: unknown): readonly unknown[] {
  if (value === undefined || value === null) return [];
  return Array.isArray(value) ? value : [value];
}
