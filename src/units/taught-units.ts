/** Names of the trade that js-quantities does not know, as it would write them. */
const taughtUnits: ReadonlyArray<readonly [RegExp, string]> = [
  [/\bacre[- ]?(ft|feet|foot)\b|\bac-ft\b|\baf\b/gi, "acre*ft"],
  [/\bkwh\b/g, "kWh"],
  [/\bcfs\b/gi, "ft3/s"],
  [/\bgpm\b/gi, "gal/min"],
  [/\bmgd\b/gi, "Mgal/day"],
  [/\bML\b/g, "Ml"],
  [/\bha\b/g, "hectare"],
  [/\bshort tons?\b|\btons\b/gi, "ton"],
  [/\byr\b|\ba\b/g, "year"],
  [/\bsqft\b|\bsq ft\b/gi, "ft2"],
  [/µ/g, "u"],
  [/°/g, "deg"],
  [/²/g, "2"],
  [/³/g, "3"],
  [/\bbtu\b/gi, "BTU"],
  [/\/\s*\(([^()/]+)\)/g, "/$1"],
  [/(?<=\d)[\s*·.]*K\b/g, "*degK"],
  [/\/\s*K\b/g, "/degK"],
];

/** A unit as the trade writes it, in the words of js-quantities. */
export const taught = (unit: string): string =>
  taughtUnits.reduce((text, [pattern, known]) => text.replace(pattern, known), unit);
