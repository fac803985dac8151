/** Spreads cells pasted into a month over the months from there on. Without it a pasted text stays in its one field. */

/** Cells in their order: an empty one leaves its month as it is, and none moves up into it. */
const cellsOf = (text: string) =>
  text
    .replace(/[\r\n]+$/, "")
    .split(/[\t\n;]/)
    .map((cell) => cell.trim());

function paste(event: ClipboardEvent): void {
  const { target } = event;
  const months = target instanceof HTMLInputElement ? target.closest(".months") : null;
  if (!(target instanceof HTMLInputElement) || !months) return;
  const cells = cellsOf(event.clipboardData?.getData("text") ?? "");
  if (cells.length < 2) return;
  event.preventDefault();
  const inputs = [...months.querySelectorAll("input")];
  const from = inputs.indexOf(target);
  const filled = inputs.slice(from, from + cells.length).filter((input, index) => {
    const cell = cells[index] ?? "";
    if (cell === "") return false;
    input.value = cell;
    return input.dispatchEvent(new Event("input", { bubbles: true }));
  });
  filled.at(-1)?.dispatchEvent(new Event("change", { bubbles: true }));
  const told = document.getElementById("paste-state");
  if (told) told.textContent = toldOf(cells, filled.length, inputs.length - from);
}

function toldOf(cells: readonly string[], filled: number, room: number): string {
  const left = cells.slice(room).filter((cell) => cell !== "").length;
  const empty = cells.slice(0, room).filter((cell) => cell === "").length;
  return [
    `${filled} months filled from ${cells.length} cells.`,
    ...(empty > 0 ? [`Months beside an empty cell stay as they were: ${empty}.`] : []),
    ...(left > 0
      ? [`Cells for which no month was left: ${left}. Paste into an earlier month if they belong here.`]
      : []),
  ].join(" ");
}

document.addEventListener("paste", paste);
