import { keyOf, type LiveBook, type Place } from "./recalculated.js";

/** A number of the list of inputs. */
export interface Listed {
  readonly name: string;
  readonly section: string;
  readonly place: Place;
  readonly value: number;
  readonly formula: string | undefined;
}

/** Rows of the list of inputs with what stands in their second cell. */
export function listOf(book: LiveBook): Listed[] {
  let section = "";
  return book.rows("Inputs").flatMap((cells, index) => {
    const [name, value] = cells;
    if (typeof name !== "string" || index < 17) return [];
    if (typeof value !== "number") section = name;
    const place = { sheet: "Inputs", row: index + 1, col: 2 };
    return typeof value === "number"
      ? [{ name, section, place, value, formula: book.formulas.get(keyOf(place)) }]
      : [];
  });
}

/** Another number that the input may have. */
export function other({ name, value }: Listed): number {
  if (/^(Horizon|Canal: its source)/.test(name) || name.includes(": last year of an infestation"))
    return value - 1;
  if (name.startsWith("Share of a year by which payments")) return 0;
  if (value === 0) return 0.01;
  return value > 0.9 && value <= 1 ? value * 0.93 : value * 1.07;
}
