/** A number with the sign that is set as wide as its figures, in place of the hyphen that computers write. */
export const trueMinus = (number: string): string => number.replace(/^-/, "−");

/** The number as programs read it. */
export const plainMinus = (number: string): string => number.replace(/^−/, "-");

/** No line may end between a minus and a sign of currency (between a minus and a figure none does). */
export const unbrokenMinus = (html: string): string => html.replace(/−(?=\p{Sc})/gu, "−\u2060");
