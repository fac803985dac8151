import { createHash } from "node:crypto";
import type { Answering, Asked } from "../app/answers/questions.js";
import { type Form, printParts } from "../forms/forms.js";
import type { Printer } from "../report/print/printer.js";

/** Forms of a study, each made when first asked for. */
export interface StudyForms {
  readonly plain: () => Promise<readonly Form[]>;
  /** @throws BrowserError where no browser is found; asking again tries again */
  readonly printed: () => Promise<readonly Form[]>;
}

const mostStudiesKept = 6;

type FormsOf = Asked<"plainForms">;

/** The forms of the studies that were asked for last stay in memory. */
export function formsDesk(answers: Answering, printer: Printer): (asked: FormsOf) => StudyForms {
  const kept = new Map<string, StudyForms>();
  return (asked) => {
    const key = keyOf(asked);
    const forms = kept.get(key) ?? {
      plain: onceMade(() => answers.ask("plainForms", asked)),
      printed: onceMade(async () => {
        const printed = await printParts(await answers.ask("formsToPrint", asked), printer);
        return answers.ask("printedForms", { ...asked, printed });
      }),
    };
    kept.delete(key);
    kept.set(key, forms);
    const oldest = kept.keys().next().value;
    if (kept.size > mostStudiesKept && oldest !== undefined) kept.delete(oldest);
    return forms;
  };
}

function keyOf({ text, odds, edition }: FormsOf): string {
  const hash = createHash("sha256").update(text).digest("hex");
  return `${hash} ${edition} ${odds ? odds.futures : "without odds"}`;
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
