/** Keeps a table that was pasted. Without it the table is sent by its button all the same. */

import { drafts } from "./drafts.js";
import { element } from "./page-inputs.js";

/** A pasted table stays in this browser until its lines are taken. */
function keepTable(form: HTMLFormElement): void {
  const box = form.elements.namedItem("csv");
  if (!(box instanceof HTMLTextAreaElement)) return;
  const key = `ramp-and-rack:${location.pathname}`;
  const kept = drafts.read(key);
  if (box.value === "" && kept?.values.csv) box.value = kept.values.csv;
  box.addEventListener("input", () => drafts.write(key, { base: "", values: { csv: box.value } }));
  form.addEventListener("submit", (event) => {
    const button = event.submitter;
    if (button instanceof HTMLButtonElement && button.value === "take") drafts.write(key, undefined);
  });
}

const tableForm = element("table-form");
if (tableForm instanceof HTMLFormElement) keepTable(tableForm);
