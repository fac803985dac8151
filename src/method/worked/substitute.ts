const tokens = /\s+|\p{L}[\p{L}\d₀-₉]*|\d[\d.,]*|./gu;
const functions = new Set(["log₁₀", "ln", "sin"]);
const binary = new Map([
  ["+", " + "],
  ["−", " − "],
  ["×", " × "],
  ["/", " ÷ "],
]);

/**
 * A formula with numbers put in for its symbols and every multiplication written out:
 * `4 Q/(π D²)` becomes `4 × 1.8689 ÷ (π × 1.524²)`.
 * @param values printed numbers by symbol, symbols without underscore
 * @throws Error naming a symbol that has no number
 */
export function substitute(formula: string, values: ReadonlyMap<string, string>): string {
  let text = "";
  let endsOperand = false;
  for (const [token] of formula.matchAll(tokens)) {
    if (token.trim() === "") continue;
    const operator = binary.get(token);
    if (operator !== undefined) {
      text += endsOperand ? operator : token;
      endsOperand = false;
    } else if (token === "^" || token === ")" || token === "²" || token === "³") {
      text += token;
      endsOperand = token !== "^";
    } else {
      const isOpening = token === "(" || token === "√" || functions.has(token);
      text += `${endsOperand ? " × " : ""}${isOpening ? opening(token) : operand(token, values, formula)}`;
      endsOperand = !isOpening;
    }
  }
  return text;
}

const opening = (token: string) => (token === "sin" ? "sin " : token);

function operand(token: string, values: ReadonlyMap<string, string>, formula: string): string {
  if (/^\d/.test(token) || token === "π") return token;
  const value = values.get(token);
  if (value === undefined) throw new Error(`worked example, “${formula}”: no number for “${token}”`);
  return value.includes("×") || value.startsWith("−") ? `(${value})` : value;
}
