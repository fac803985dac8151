/**
 * A pocket calculator for printed sums: + − × ÷ ^ ² ³ √ log₁₀ ln sin π, brackets, degrees. Written for the tests, apart
 * from the code that prints the sums.
 */
export function reckon(
  text: string,
  alter: (number: number, index: number) => number = (number) => number,
): number {
  const tokens = text.match(/log₁₀|ln|sin|π|\d[\d.,]*|[+−×÷^²³√()°]|\S/g) ?? [];
  let position = 0;
  let numbers = 0;
  const next = () => tokens[position++];
  const accept = (token: string) => {
    if (tokens[position] !== token) return false;
    position += 1;
    return true;
  };

  function sum(): number {
    let value = product();
    for (;;) {
      if (accept("+")) value += product();
      else if (accept("−")) value -= product();
      else return value;
    }
  }

  function product(): number {
    let value = signed();
    for (;;) {
      if (accept("×")) value *= signed();
      else if (accept("÷")) value /= signed();
      else return value;
    }
  }

  const signed = (): number => (accept("−") ? -power() : power());

  function power(): number {
    const base = atom();
    if (accept("²")) return base ** 2;
    if (accept("³")) return base ** 3;
    return accept("^") ? base ** signed() : base;
  }

  function atom(): number {
    const token = next();
    if (token === "(") {
      const value = sum();
      if (!accept(")")) throw new Error(`“${text}”: a bracket is not closed`);
      return value;
    }
    if (token === "√") return Math.sqrt(atom());
    if (token === "log₁₀") return Math.log10(atom());
    if (token === "ln") return Math.log(atom());
    if (token === "sin") return Math.sin(atom());
    if (token === "π") return Math.PI;
    const number = Number((token ?? "").replaceAll(",", ""));
    if (token === undefined || Number.isNaN(number))
      throw new Error(`“${text}”: “${token}” cannot be reckoned`);
    const value = alter(number, numbers++);
    return accept("°") ? (value * Math.PI) / 180 : value;
  }

  const value = sum();
  if (position < tokens.length) throw new Error(`“${text}”: “${tokens[position]}” is left over`);
  return value;
}

/**
 * Half a unit in the last of five figures for a printed number that has them; nothing for one of fewer figures, which
 * is exact. In whole numbers of more than five figures the first five count.
 */
export function halfUnits(text: string): number[] {
  return (text.replaceAll("log₁₀", "").match(/\d[\d.,]*/g) ?? []).map((number) => {
    const [whole = "", decimals = ""] = number.replaceAll(",", "").split(".");
    const figures = `${whole}${decimals}`.replace(/^0+/, "").length;
    if (figures < 5) return 0;
    return decimals === "" ? 10 ** (figures - 5) / 2 : 10 ** -decimals.length / 2;
  });
}
