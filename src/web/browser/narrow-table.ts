/** Narrows a table to the rows that hold every word typed, those with it in their name first. Without it the same field is sent to the server. */

const countOf = (tableId: string) => document.getElementById(`${tableId}-count`);

const textOf = (element: Element | null) =>
  element?.textContent?.toLowerCase().replaceAll("\u200b", "") ?? "";

function narrow(
  field: HTMLInputElement,
  rows: readonly HTMLTableRowElement[],
  count: HTMLElement | null,
): void {
  const words = field.value.toLowerCase().split(/\s+/).filter(Boolean);
  const holds = (text: string) => words.every((word) => text.includes(word));
  const named: HTMLTableRowElement[] = [];
  const others: HTMLTableRowElement[] = [];
  for (const row of rows) {
    row.hidden = !holds(`${textOf(row)} ${row.dataset.words ?? ""}`);
    if (words.length > 0 && holds(textOf(row.querySelector("th a")))) named.push(row);
    else others.push(row);
  }
  rows[0]?.parentElement?.append(...named, ...others);
  if (count) count.textContent = `${rows.filter(({ hidden }) => !hidden).length} of ${rows.length} shown`;
}

for (const field of document.querySelectorAll<HTMLInputElement>("input[data-narrows]")) {
  const id = field.dataset.narrows ?? "";
  const rows = [...document.querySelectorAll<HTMLTableRowElement>(`#${CSS.escape(id)} tbody tr`)];
  field.addEventListener("input", () => narrow(field, rows, countOf(id)));
}

export {};
