import type { Explained } from "./explained.js";

/** A form that studies had once. */
export class GoneFormError extends Error {
  constructor(readonly studyId: string) {
    super("a form that studies no longer have");
  }
}

/** The path of the slides that earlier versions had: links to them may be kept somewhere. */
export const slidesPath = "slides.html";

/** What to use in place of the slides. */
export function explainGoneForm(
  error: unknown,
): (Pick<Explained, "status" | "title"> & Partial<Explained>) | undefined {
  if (!(error instanceof GoneFormError)) return undefined;
  const forms = `/studies/${error.studyId}/forms`;
  return {
    status: 410,
    title: "Slides are no longer made",
    advice: [
      "For a meeting there is one page with the answer and its figures, and each chart as a picture of its own.",
    ],
    links: [
      { href: `${forms}/summary.html`, label: "One page for a public meeting" },
      { href: forms, label: "All other forms" },
    ],
  };
}
