/** Narrows a table to the rows that hold every word typed. Without it the same field is sent to the server. */

const countOf = (tableId: string) => document.getElementById(`${tableId}-count`);

function narrow(field: HTMLInputElement, tableId: string): void {
  const words = field.value.toLowerCase().split(/\s+/).filter(Boolean);
  const rows = [...document.querySelectorAll<HTMLTableRowElement>(`#${CSS.escape(tableId)} tbody tr`)];
  for (const row of rows) {
    const text = row.textContent?.toLowerCase().replaceAll("\u200b", "") ?? "";
    row.hidden = !words.every((word) => text.includes(word));
  }
  const count = countOf(tableId);
  if (count) count.textContent = `${rows.filter(({ hidden }) => !hidden).length} of ${rows.length} shown`;
}

for (const field of document.querySelectorAll<HTMLInputElement>("input[data-narrows]")) {
  field.addEventListener("input", () => narrow(field, field.dataset.narrows ?? ""));
}
