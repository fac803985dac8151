/**
 * What a quantity in a study may measure: the coherent unit that the model works in, the units in which it
 * is printed, and an example for messages. `unit` and the display units are written for js-quantities.
 * Money dimensions keep the currency of the study; only the unit under the stroke is converted.
 */
export interface Dimension {
  /** What a reader calls it: "a length". */
  readonly name: string;
  /** Coherent unit inside the model. */
  readonly unit: string;
  readonly us: DisplayUnit;
  readonly si: DisplayUnit;
  readonly example: string;
  /** Money per `unit`; the text starts with a currency sign or code. */
  readonly money?: boolean;
  /** What may stand under the stroke, where the unit converter would take more than is meant. */
  readonly underStroke?: RegExp;
  readonly minimum?: number;
  readonly maximum?: number;
}

export interface DisplayUnit {
  /** For conversion. */
  readonly unit: string;
  /** For print. */
  readonly label: string;
}

export const display = (unit: string, label = unit): DisplayUnit => ({ unit, label });
