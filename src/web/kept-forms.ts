import { createHash } from "node:crypto";
import { LRUCache } from "lru-cache";
import type { Answering, Asked } from "../app/answers/questions.js";
import type { Form } from "../forms/form.js";
import { printParts } from "../forms/print-parts.js";
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
export function keptForms(answers: Answering, printer: Printer): (asked: FormsOf) => StudyForms {
  const formsOf = (asked: FormsOf): StudyForms => ({
    plain: onceMade(() => answers.ask("plainForms", asked)),
    printed: onceMade(async () => {
      const printed = await printParts(await answers.ask("formsToPrint", asked), printer);
      return answers.ask("printedForms", { printed });
    }),
  });
  const kept = new LRUCache<string, StudyForms, FormsOf>({
    max: mostStudiesKept,
    memoMethod: (_key, _forms, { context }) => formsOf(context),
  });
  return (asked) => kept.memo(keyOf(asked), { context: asked });
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
