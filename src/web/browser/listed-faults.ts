import { element } from "./page-inputs.js";

/** What is wrong with an input, by its id. */
export interface Fault {
  readonly id: string;
  readonly text: string;
}

/** Lets what a page lists as wrong follow what is typed: what is mended is hidden, and nothing is added before the page is sent again. */
export function followFaults(faults: readonly Fault[]): void {
  const left = new Map(faults.map(({ id, text }) => [id, text]));
  const links = [...document.querySelectorAll<HTMLAnchorElement>(".summary-of-errors li > a")];
  for (const link of links) show(link, left.get(link.hash.slice(1)));
  const box = document.querySelector<HTMLElement>(".summary-of-errors");
  if (box) box.hidden = !links.some(({ hash }) => left.has(hash.slice(1)));
}

/** A line of the list and the words at its input. @param text absent once it is mended */
function show(link: HTMLAnchorElement, text: string | undefined): void {
  const id = link.hash.slice(1);
  const line = link.closest("li");
  if (line) line.hidden = text === undefined;
  const words = element(`${id}-error`);
  if (words) words.textContent = text ?? "";
  if (text === undefined) element(id)?.removeAttribute("aria-invalid");
  else element(id)?.setAttribute("aria-invalid", "true");
  if (text !== undefined) link.nextSibling?.replaceWith(`: ${text}`);
}
