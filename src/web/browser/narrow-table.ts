/**
 * Narrows a table to the rows that hold every word typed, those with it in their name first, then those with it in the
 * other words for them. Without it the same field is sent to the server.
 */

const countOf = (tableId: string) => document.getElementById(`${tableId}-count`);

const textOf = (element: Element | null) =>
  element?.textContent?.toLowerCase().replaceAll("\u200b", "") ?? "";

/** Without the ending of a plural: who types divers finds a diver. */
const stem = (word: string) => word.replace(/(?<=.{2}[^s])s$/, "");

function narrow(
  field: HTMLInputElement,
  rows: readonly HTMLTableRowElement[],
  count: HTMLElement | null,
): void {
  const words = field.value.toLowerCase().split(/\s+/).filter(Boolean).map(stem);
  const holds = (text: string) => words.every((word) => text.includes(word));
  const placeOf = (row: HTMLTableRowElement) => {
    const name = textOf(row.querySelector("th a"));
    const texts = [name, `${name} ${row.dataset.words?.toLowerCase() ?? ""}`];
    const place = texts.findIndex(holds);
    return place < 0 ? texts.length : place;
  };
  for (const row of rows) row.hidden = !holds(`${textOf(row)} ${row.dataset.words?.toLowerCase() ?? ""}`);
  rows[0]?.parentElement?.append(...rows.toSorted((one, other) => placeOf(one) - placeOf(other)));
  const isEmpty = rows.every(({ hidden }) => hidden);
  rows[0]?.closest("table")?.toggleAttribute("hidden", isEmpty);
  if (count) count.textContent = `${rows.filter(({ hidden }) => !hidden).length} of ${rows.length} shown`;
}

for (const field of document.querySelectorAll<HTMLInputElement>("input[data-narrows]")) {
  const id = field.dataset.narrows ?? "";
  const rows = [...document.querySelectorAll<HTMLTableRowElement>(`#${CSS.escape(id)} tbody tr`)];
  field.addEventListener("input", () => narrow(field, rows, countOf(id)));
}

export {};
