import type { PrintSettings } from "../report/print/pdf.js";
import type { Picture } from "../report/print/pictures.js";
import type { Printer } from "../report/print/printer.js";

/** What is to be drawn and printed for the other forms. */
export interface FormsToPrint {
  /** The report, for its charts. */
  readonly body: string;
  readonly title: string;
  /** The page for a meeting, and the sheet for the wall; absent where mussels are known already. */
  readonly summary: string;
  readonly wall: string | undefined;
  readonly settings: PrintSettings;
}

/** The same drawn and printed. */
export interface PrintedParts {
  readonly pictures: readonly Picture[];
  readonly letter: Uint8Array;
  readonly a4: Uint8Array;
  readonly wall?: Uint8Array | undefined;
}

/** @throws BrowserError where no browser is found */
export async function printParts(
  { body, title, summary, wall, settings }: FormsToPrint,
  printer: Printer,
): Promise<PrintedParts> {
  const pictures = await printer.draw(body, title);
  const printed = (paper: "letter" | "a4") => printer.print(summary, { ...settings, paper });
  return {
    pictures,
    letter: await printed("letter"),
    a4: await printed("a4"),
    wall: wall === undefined ? undefined : await printer.print(wall, settings),
  };
}
