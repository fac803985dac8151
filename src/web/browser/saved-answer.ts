import { element, isInput } from "./page-inputs.js";

/** What the server tells of a form that it saved. */
export interface SavedAnswer {
  readonly revision: number;
  readonly standing: string;
  readonly balance: string;
  readonly steps: string;
  readonly summary: string;
  readonly levels?: string;
  readonly marks: Readonly<Record<string, string>>;
  readonly fields: readonly {
    readonly id: string;
    readonly error: string;
    readonly needed: string;
    readonly implied: string;
    readonly confirm: string;
  }[];
  readonly rows: readonly { readonly id: string; readonly title: string }[];
  readonly written: readonly {
    readonly id: string;
    readonly value: string;
    readonly unitName: string;
    readonly unit: string;
  }[];
  readonly converted: readonly {
    readonly text: string;
    readonly name: string;
    readonly typed: string;
    readonly unit: string;
  }[];
}

export function showError({ id, error, needed, implied, confirm }: SavedAnswer["fields"][number]): void {
  const words = element(`${id}-implied`);
  if (words) words.textContent = implied;
  const place = element(`${id}-error`);
  if (!place) return;
  place.textContent = `${error} ${needed}`.trim();
  if (confirm !== "") place.append(" ", confirming(confirm));
  place.className = error === "" ? "needed" : "error";
  const input = element(id);
  if (!isInput(input)) return;
  if (error === "") input.removeAttribute("aria-invalid");
  else input.setAttribute("aria-invalid", "true");
}

function confirming(act: string): HTMLButtonElement {
  const button = document.createElement("button");
  Object.assign(button, { name: "act", value: act, className: "plain small", textContent: "It is right" });
  return button;
}

/** A row is titled by what is in it, and so are its buttons for who hears them. */
export function showTitle({ id, title }: SavedAnswer["rows"][number]): void {
  const legend = document.querySelector(`#${id} > legend`);
  if (legend) legend.textContent = title;
  for (const words of document.querySelectorAll(`#${id} > .buttons .unseen`)) words.textContent = ` ${title}`;
}
