/**
 * Narrows a table to the rows that hold every word typed, those with it in their name first, then those with it in the
 * other words for them, in their note, and elsewhere. Without it the same field is sent to the server.
 */

const countOf = (tableId: string) => document.getElementById(`${tableId}-count`);

const textOf = (element: Element | null) =>
  element?.textContent?.toLowerCase().replaceAll("\u200b", "") ?? "";

/** Without the ending of a plural: who types divers finds a diver. */
const stem = (word: string) => word.replace(/(?<=.{5})ies$|(?<=.{2}[^s])s$/, "");

function narrow(
  field: HTMLInputElement,
  rows: readonly HTMLTableRowElement[],
  count: HTMLElement | null,
): void {
  const words = field.value.toLowerCase().split(/\s+/).filter(Boolean).map(stem);
  const holds = (text: string) => words.every((word) => text.includes(word));
  const placeOf = (row: HTMLTableRowElement) => {
    const name = textOf(row.querySelector("th a"));
    const named = `${name} ${row.dataset.words?.toLowerCase() ?? ""}`;
    const texts = [name, named, `${named} ${textOf(row.querySelector(".noted"))}`];
    const place = texts.findIndex(holds);
    return place < 0 ? texts.length : place;
  };
  for (const row of rows) row.hidden = !holds(`${textOf(row)} ${row.dataset.words?.toLowerCase() ?? ""}`);
  rows[0]?.parentElement?.append(...rows.toSorted((one, other) => placeOf(one) - placeOf(other)));
  const isEmpty = rows.every(({ hidden }) => hidden);
  rows[0]?.closest("table")?.toggleAttribute("hidden", isEmpty);
  if (count) count.textContent = countText(rows, (row) => placeOf(row) === 0, count.dataset.none ?? "");
}

/** How many are shown, and how many of these by their name; what to do where there are none. */
function countText(
  rows: readonly HTMLTableRowElement[],
  isByName: (row: HTMLTableRowElement) => boolean,
  none: string,
): string {
  const shown = rows.filter(({ hidden }) => !hidden);
  if (shown.length === 0) return none;
  const byName = shown.filter(isByName).length;
  const isMixed = byName > 0 && byName < shown.length;
  const how = isMixed ? `: ${byName} by name, then by other words for it, note, source or value` : "";
  return `${shown.length} of ${rows.length} shown${how}`;
}

for (const field of document.querySelectorAll<HTMLInputElement>("input[data-narrows]")) {
  const id = field.dataset.narrows ?? "";
  const rows = [...document.querySelectorAll<HTMLTableRowElement>(`#${CSS.escape(id)} tbody tr`)];
  field.addEventListener("input", () => narrow(field, rows, countOf(id)));
}

export {};
