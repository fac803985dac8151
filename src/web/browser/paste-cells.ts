/** Spreads cells pasted into a month over the months from there on. Without it a pasted text stays in its one field. */

const cellsOf = (text: string) =>
  text
    .trim()
    .split(/[\t\n;]/)
    .map((cell) => cell.trim())
    .filter((cell) => cell !== "");

function paste(event: ClipboardEvent): void {
  const { target } = event;
  const months = target instanceof HTMLInputElement ? target.closest(".months") : null;
  if (!(target instanceof HTMLInputElement) || !months) return;
  const cells = cellsOf(event.clipboardData?.getData("text") ?? "");
  if (cells.length < 2) return;
  event.preventDefault();
  const inputs = [...months.querySelectorAll("input")];
  const from = inputs.indexOf(target);
  const filled = inputs.slice(from, from + cells.length);
  filled.forEach((input, index) => {
    input.value = cells[index] ?? "";
    input.dispatchEvent(new Event("input", { bubbles: true }));
  });
  filled.at(-1)?.dispatchEvent(new Event("change", { bubbles: true }));
  const left = cells.length - filled.length;
  const told = document.getElementById("paste-state");
  if (told)
    told.textContent = `${filled.length} months filled from ${cells.length} cells.${left > 0 ? ` The last ${left} had no month left: paste into an earlier month if they belong here.` : ""}`;
}

document.addEventListener("paste", paste);
