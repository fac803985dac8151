import { createHash } from "node:crypto";
import { type Form, type FormParts, plainForms, printedForms } from "../forms/forms.js";
import type { Printer } from "../report/printer.js";

/** Forms of a study, each made when first asked for. */
export interface StudyForms {
  readonly plain: () => Promise<readonly Form[]>;
  /** @throws BrowserError where no browser is found; asking again tries again */
  readonly printed: () => Promise<readonly Form[]>;
}

const mostStudiesKept = 6;

/** The forms of the studies that were asked for last stay in memory. */
export function formsDesk(printer: Printer): (text: string, parts: FormParts) => StudyForms {
  const kept = new Map<string, StudyForms>();
  return (text, parts) => {
    const key = keyOf(text, parts);
    const forms = kept.get(key) ?? {
      plain: onceMade(() => plainForms(parts)),
      printed: onceMade(() => printedForms(parts, printer)),
    };
    kept.delete(key);
    kept.set(key, forms);
    const oldest = kept.keys().next().value;
    if (kept.size > mostStudiesKept && oldest !== undefined) kept.delete(oldest);
    return forms;
  };
}

function keyOf(text: string, { told, edition }: FormParts): string {
  const hash = createHash("sha256").update(text).digest("hex");
  return `${hash} ${edition} ${told ? told.odds.futures : "without odds"}`;
}

/** Keeps what was made; a failure is not kept. */
function onceMade<Made>(make: () => Promise<Made>): () => Promise<Made> {
  let made: Promise<Made> | undefined;
  return () => {
    made ??= make().catch((error: unknown) => {
      made = undefined;
      throw error;
    });
    return made;
  };
}
