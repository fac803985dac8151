/** Inputs of a page, and what is sent of them. */

export type Input = HTMLInputElement | HTMLSelectElement | HTMLTextAreaElement;

export const element = (id: string) => document.getElementById(id);
export const isInput = (target: unknown): target is Input =>
  target instanceof HTMLInputElement ||
  target instanceof HTMLSelectElement ||
  target instanceof HTMLTextAreaElement;

export const isBox = (input: Input): input is HTMLInputElement =>
  input instanceof HTMLInputElement && input.type === "checkbox";

/** What is sent of an input: of a box that is not ticked nothing but the hidden input before it. */
export const sentOf = (input: Input) => (isBox(input) && !input.checked ? "" : input.value);

export function putValue(input: Input, value: string): void {
  if (isBox(input)) input.checked = value !== "";
  else input.value = value;
}

/** The input of a name that a person sees: before a box stands a hidden one of the same name. */
export function inputNamed(form: HTMLFormElement, name: string): Input | undefined {
  const found = [...form.elements].filter((each) => isInput(each)).filter((each) => each.name === name);
  return found.find(isBox) ?? found[0];
}

export function put(id: string, html: string | undefined): void {
  const place = element(id);
  if (place && html !== undefined) place.innerHTML = html;
}

export const post = (form: HTMLFormElement, body: URLSearchParams) =>
  fetch(form.getAttribute("action") ?? location.href, {
    method: "POST",
    headers: { Accept: "application/json" },
    body,
  });

/** What a browser would send of a form: texts only, no files. */
export function pairs(form: HTMLFormElement): [string, string][] {
  return [...new FormData(form)].flatMap(([name, value]): [string, string][] =>
    typeof value === "string" ? [[name, value]] : [],
  );
}
