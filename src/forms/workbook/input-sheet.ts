import type { Worked } from "./formula.js";
import { type Grid, grid } from "./grid.js";
import { type Entry, type Formula, input, type Look, type SheetDraft, strong, text, value } from "./sheet.js";

/** A number of the list of inputs. */
export interface InputDraft {
  readonly name: string;
  readonly amount: number;
  readonly look: Look;
  readonly unit?: string;
  readonly origin?: string | undefined;
  /** The least and the largest whole number that it may be. */
  readonly limits?: readonly [number, number];
}

/** The list of inputs while it is filled in. */
export interface InputList {
  readonly section: (title: string) => void;
  /** @returns its cell */
  readonly add: (draft: InputDraft) => Worked;
  /** The same where another section may have it too: under one name and of one amount it is a link to the first. */
  readonly addShared: (draft: InputDraft) => Worked;
  /** A number that the reader cannot change here, since more hangs on it than the sheets hold. */
  readonly addComputed: (draft: InputDraft) => Worked;
  /** Puts what the inputs come to above them. @returns the same as a link */
  readonly answer: (row: AnswerRow) => AnswerRow;
  readonly draft: () => SheetDraft;
}

export interface AnswerRow {
  readonly name: string;
  readonly formula: Formula;
  readonly look: Look;
}

const name = "Inputs";
const firstAnswer = 6;
/** Rows kept for what the inputs come to. */
const answers = 9;
const headRow = firstAnswer + answers + 1;
const columns = { name: 0, amount: 1, unit: 2, origin: 3 };

const introduction =
  "Change a number in a yellow cell and all sheets follow. Gray cells are computed by the program: growth, choice of plans, quantities of work, simulated outcomes; a sheet cannot hold them, and they stay as they are. Where a change would make another plan cheaper, or change how a part fouls, the program chooses plans and computes growth again; these sheets do not, so enter the change in the study.";

export function inputList(): InputList {
  const sheet = grid(name);
  let answered = 0;
  let current = "";
  const shared = new Map<string, { readonly section: string; readonly cell: Worked }>();
  writeHead(sheet);
  const limits: { row: number; column: number; from: number; to: number }[] = [];
  const add = (draft: InputDraft, entry: Entry): Worked => {
    const row = sheet.height();
    if (draft.limits) {
      const [from, to] = draft.limits;
      limits.push({ row, column: columns.amount, from, to });
    }
    sheet.put(row, columns.name, text(draft.name));
    sheet.put(row, columns.unit, text(draft.unit ?? "", "unit"));
    sheet.put(row, columns.origin, text(draft.origin ?? "", "note"));
    return sheet.put(row, columns.amount, entry);
  };
  return {
    section: (title) => {
      current = title;
      sheet.put(sheet.height() + 1, columns.name, strong(text(title)));
    },
    add: (draft) => add(draft, input(draft.amount, draft.look)),
    addShared: (draft) => {
      const key = JSON.stringify([draft.name, draft.amount, draft.unit]);
      const known = shared.get(key);
      if (known && known.section !== current)
        return add({ ...draft, origin: asIn(known.section) }, value(known.cell, draft.look));
      const cell = add(draft, input(draft.amount, draft.look));
      shared.set(key, { section: current, cell });
      return cell;
    },
    addComputed: (draft) => add(draft, value(draft.amount, draft.look)),
    answer: ({ name: label, formula, look }) => {
      const row = firstAnswer + answered;
      if (answered >= answers) throw new Error("more answers than rows kept for them");
      answered += 1;
      sheet.put(row, columns.name, text(label));
      const cell = sheet.put(row, columns.amount, strong(value(formula, look)));
      return { name: label, formula: { formula: cell.formula, result: formula.result }, look };
    },
    draft: () =>
      sheet.draft({
        widths: [92, 20, 28, 76],
        headRows: 0,
        joined: [{ row: 1, from: 0, to: 3 }],
        limits,
      }),
  };
}

const asIn = (section: string) =>
  `As for ${section.slice(0, section.lastIndexOf(": "))}; put a number here to separate them`;

function writeHead(sheet: Grid): void {
  sheet.put(0, 0, text("Inputs", "title"));
  sheet.put(1, 0, text(introduction, "paragraph"));
  sheet.put(2, 0, text("Input: may be changed here", "input-legend"));
  sheet.put(3, 0, text("Computed by the program: changes with the study alone", "computed-legend"));
  sheet.putRow(firstAnswer - 1, [text("What they come to, at central values", "head"), text("", "head")]);
  sheet.putRow(
    headRow,
    ["Input", "Value", "Unit", "Origin"].map((each) => text(each, "head")),
  );
}
