/** Names that stand upright in a formula. */
const uprightWords = new Set([
  "exp",
  "ln",
  "log₁₀",
  "sin",
  "max",
  "min",
  "round",
  "high",
  "low",
  "where",
  "Σ",
  "π",
]);

const letters = /^\p{L}[\p{L}\d₀-₉]*/u;
const numeral = /^\d[\d.,]*/;

const asHtml = (text: string): string =>
  text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;");

/**
 * A formula written in plain text, as HTML: symbols in italics with their index, exponents raised, the rest
 * upright. See `Formula` for how it is written.
 * @param symbols as declared, `k_F`; in the formula they stand without the underscore
 * @throws Error naming a letter that is neither a declared symbol nor a known name
 */
export function typeset(formula: string, symbols: readonly string[]): string {
  const known = new Map(symbols.map((symbol) => [symbol.replace("_", ""), symbol]));
  const pieces: string[] = [];
  let rest = formula;
  while (rest.length > 0) {
    const [html, length] = nextPiece(rest, known, formula);
    pieces.push(html);
    rest = rest.slice(length);
  }
  return pieces.join("");
}

type Known = ReadonlyMap<string, string>;
type Piece = [html: string, length: number];

function nextPiece(rest: string, known: Known, formula: string): Piece {
  if (rest.startsWith("^")) return exponent(rest, known, formula);
  if (rest.startsWith("√")) return root(rest, known, formula);
  const run = letters.exec(rest)?.[0];
  if (run) return [wordOrSymbols(run, known, formula), run.length];
  const number = numeral.exec(rest)?.[0];
  if (number) return [number, number.length];
  const character = String.fromCodePoint(rest.codePointAt(0) ?? 0);
  return [asHtml(character), character.length];
}

/** A declared symbol, an upright name, or symbols written without a space: `gh`. */
function wordOrSymbols(run: string, known: Known, formula: string): string {
  const whole = known.get(run);
  if (whole !== undefined) return symbolHtml(whole);
  if (run === "log₁₀") return "log<sub>10</sub>";
  if (uprightWords.has(run)) return run;
  const longest = [...known.keys()]
    .filter((plain) => run.startsWith(plain))
    .reduce((best, plain) => (plain.length > best.length ? plain : best), "");
  if (longest === "") throw new Error(`“${formula}”: “${run}” is not explained; declare it as a symbol`);
  return `${symbolHtml(known.get(longest) ?? "")}${wordOrSymbols(run.slice(longest.length), known, formula)}`;
}

/** `k_F` in italics with an upright index. */
export function symbolHtml(symbol: string): string {
  const [base = "", index] = symbol.split("_");
  return `<i>${asHtml(base)}${index === undefined ? "" : `<sub>${asHtml(index)}</sub>`}</i>`;
}

function exponent(rest: string, known: Known, formula: string): Piece {
  const sign = rest[1] === "−" ? "−" : "";
  const power = operand(rest.slice(1 + sign.length), formula);
  const bare = sign === "" && power.startsWith("(") ? power.slice(1, -1) : power;
  return [`<sup>${sign}${typeset(bare, [...known.values()])}</sup>`, 1 + sign.length + power.length];
}

function root(rest: string, known: Known, formula: string): Piece {
  const under = operand(rest.slice(1), formula);
  const bare = under.startsWith("(") ? under.slice(1, -1) : under;
  return [`√<span class="under-root">${typeset(bare, [...known.values()])}</span>`, 1 + under.length];
}

/** What an exponent or a root holds: a bracket with all in it, a number or a symbol. */
function operand(text: string, formula: string): string {
  if (!text.startsWith("(")) {
    const found = letters.exec(text)?.[0] ?? numeral.exec(text)?.[0];
    if (found === undefined) throw new Error(`“${formula}”: nothing after ^ or √`);
    return found;
  }
  let depth = 0;
  for (let end = 0; end < text.length; end++) {
    if (text[end] === "(") depth += 1;
    if (text[end] === ")") depth -= 1;
    if (depth === 0) return text.slice(0, end + 1);
  }
  throw new Error(`“${formula}”: a bracket is not closed`);
}
