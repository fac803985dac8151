import type { TableView } from "../../report/words/view-types.js";
import { printed } from "../worked/number.js";
import { newSheet, type Sheet } from "../worked/sheet.js";

/** What leads from a structure's entries to one of its cost lines, to be reckoned again from what is printed. */
export interface Path extends Pick<Sheet, "given" | "groups"> {
  readonly title: string;
  readonly intro: string;
  readonly tables: readonly TableView[];
}

/** A path that is being written. */
export interface PathSheet extends Sheet {
  readonly tables: TableView[];
  readonly table: (caption: string, head: readonly string[], rows: readonly (readonly Cell[])[]) => void;
}

type Cell = string | number;

const isNumber = (cell: Cell | undefined) => typeof cell === "number" || /^\d+\.\d+$/.test(cell ?? "");

/** Levels lie close together far above the sea: to the millimetre, where five figures would tell too little. */
export const levelText = (metres: number): string => metres.toFixed(3);

const superscripts = "⁰¹²³⁴⁵⁶⁷⁸⁹";

/** Cells are plain text: a power of ten is raised by its characters. */
const raised = (text: string): string =>
  text.replace(/\^(−?)(\d+)$/, (_, sign: string, digits: string) => {
    const power = [...digits].map((digit) => superscripts[Number(digit)]).join("");
    return `${sign && "⁻"}${power}`;
  });

/** @param id begins the ids of its tables */
export function newPath(id: string): PathSheet {
  const tables: TableView[] = [];
  return {
    ...newSheet("si"),
    tables,
    table: (caption, head, rows) => {
      const isNumeric = (column: number) => rows.some((row) => isNumber(row[column]));
      tables.push({
        id: `${id}-${tables.length + 1}`,
        caption,
        compact: true,
        head: head.map((text, column) => ({ text, numeric: isNumeric(column) })),
        rows: rows.map((row) => ({
          cells: row.map((cell, column) => ({
            text: typeof cell === "number" ? raised(printed(cell)) : cell,
            numeric: isNumeric(column),
          })),
        })),
      });
    },
  };
}
