/** A text of any length that makes a careless pattern or reader begin again at each of its characters. */
export interface Adversary {
  readonly name: string;
  readonly of: (length: number) => string;
}

/** @param piece repeated to the length @param around what stands before and after */
function repeated(name: string, piece: string, around: readonly [string, string] = ["", ""]): Adversary {
  const [before, after] = around;
  return {
    name,
    of: (length) => before + piece.repeat(Math.ceil(length / piece.length)) + after,
  };
}

/** Runs of one character, each longer by one than that before. */
const growingRuns = (name: string, character: string): Adversary => ({
  name,
  of: (length) => {
    const runs: string[] = [];
    for (let run = 1, used = 0; used < length; run += 1, used += run) runs.push(character.repeat(run));
    return runs.join(" ");
  },
});

const numbered = (name: string, piece: (number: number) => string): Adversary => ({
  name,
  of: (length) => {
    const pieces: string[] = [];
    for (let number = 0, used = 0; used < length; number += 1) {
      const next = piece(number);
      pieces.push(next);
      used += next.length;
    }
    return pieces.join("");
  },
});

/** Of numbers, units and ranges. */
const ofQuantities: readonly Adversary[] = [
  repeated("blanks in a quantity", " ", ["1", "x"]),
  repeated("blanks before a bracket", " ", ["depth", "("]),
  repeated("tabs", "\t", ["a", "a"]),
  repeated("no-break spaces", "\u00a0", ["1", "x"]),
  repeated("digits", "1"),
  repeated("digits, then a letter", "1", ["", "x"]),
  repeated("digits, then a line", "1", ["", "\nx"]),
  repeated("digits in threes", "111,", ["", "x"]),
  repeated("commas", ","),
  repeated("semicolons", ";"),
  repeated("points", ".", ["1", "x"]),
  repeated("1 to 1 to 1", "1 to "),
  repeated("one of many", "1 m (1 %), ", ["one of ", ""]),
  repeated("as as as", " as ", ["1", "pert "]),
  repeated("signs of money", "$ "),
  repeated("slashes", "/"),
  repeated("brackets", "("),
  repeated("pairs of brackets", "()"),
];

/** Of Markdown, YAML and tables. */
const ofMarks: readonly Adversary[] = [
  repeated("square brackets", "["),
  repeated("braces", "{"),
  repeated("pairs of square brackets", "[]"),
  repeated("braces with keys", "{a: ", ["a: ", ""]),
  repeated("asterisks", "*"),
  repeated("asterisks with letters", "*a **b "),
  repeated("underscores with letters", "_a __b "),
  repeated("backticks", "`"),
  growingRuns("growing runs of backticks", "`"),
  repeated("tildes with letters", "~~a "),
  repeated("bars", "|a"),
  repeated("lines of a table", "|a|a|\n|-|-|\n"),
  repeated("quoted paragraphs", "> "),
  repeated("list in a list", "- "),
  repeated("question marks", "? "),
  repeated("lines", "\n", ["a", "a"]),
  repeated("lines of blanks", "\n  ", ["a: b", "c"]),
  repeated("lines of words", "a\n"),
  repeated("quotation marks", '"'),
  repeated("apostrophes", "'"),
  repeated("strokes", "\\", ['a: "', '"']),
  repeated("hyphens", "-", ["a", "a"]),
  repeated("hyphens with letters", "a-"),
  repeated("less-than signs", "<a "),
  repeated("ampersands", "&a "),
  repeated("links", "[a](", ["", ")"]),
  repeated("hashes", " #"),
  numbered("keys", (number) => `k${number}: 1\n`),
  numbered("one key often", (number) => `k${number % 7}: 1\n`),
  numbered("aliases", (number) => (number === 0 ? "- &a x\n" : "- *a\n")),
  numbered("anchors with aliases", (number) => `- &a${number} x\n- *a${number}\n`),
  numbered("aliases of aliases", (number) =>
    number === 0 ? "- &a0 x\n" : `- &a${number} [*a${number - 1}, *a${number - 1}]\n`,
  ),
];

/** Of scripts and of what no reader sees. */
const ofScripts: readonly Adversary[] = [
  repeated("combining marks", "\u0301\u0323", ["e", ""]),
  repeated("letters with marks", "e\u0301"),
  repeated("words from right to left", "א ב1, "),
  repeated("emoji", "🦪"),
  repeated("lone surrogates", "\ud800"),
  repeated("control characters", "\u0007"),
  repeated("letters", "a"),
  repeated("capitals", "A"),
  repeated("words", "a "),
];

export const adversaries: readonly Adversary[] = [...ofQuantities, ...ofMarks, ...ofScripts];
