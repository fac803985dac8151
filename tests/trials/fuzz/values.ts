import fc from "fast-check";

/** Numbers at which arithmetic goes wrong. */
export const extremeNumbers: readonly number[] = [
  0,
  -0,
  -1,
  0.5,
  1,
  1.5,
  2,
  12,
  99,
  101,
  365,
  1e3,
  1e4,
  1e6,
  1e9,
  1e12,
  1e15,
  1e16,
  1e21,
  1e150,
  1e300,
  1.7976931348623157e308,
  5e-324,
  1e-300,
  1e-12,
  1e-6,
  1e-3,
  -1e9,
  2 ** 31,
  2 ** 53,
  2000,
  2200,
  0.999999999,
];

export const anyNumber: fc.Arbitrary<number> = fc.oneof(
  { arbitrary: fc.constantFrom(...extremeNumbers), weight: 2 },
  { arbitrary: fc.double({ min: 0, max: 1, noNaN: true }), weight: 1 },
  { arbitrary: fc.double({ min: 0, max: 1e7, noNaN: true }), weight: 1 },
);

/** Units of every kind, right and wrong for a place, and some that there are not. */
export const units: readonly string[] = [
  ...[
    "m",
    "ft",
    "in",
    "mm",
    "km",
    "m2",
    "ft2",
    "acre",
    "ha",
    "m3",
    "acre-ft",
    "Mgal",
    "cfs",
    "gpm",
    "MGD",
    "m3/s",
  ],
  ...[
    "ft/s",
    "degF",
    "degC",
    "K",
    "mg/L",
    "g/L",
    "uS/cm",
    "deg",
    "d",
    "h",
    "min",
    "yr",
    "lb/ft2",
    "kg/m2",
    "kWh",
  ],
  ...[
    "MWh",
    "kW/K",
    "BTU/(h ft2 degF)",
    "%",
    "%/yr",
    "/yr",
    "/h",
    "/d",
    "/acre-ft",
    "/kWh",
    "lb",
    "t",
    "furlong",
  ],
  ...["m/0", "1/m", "m^-400", "ft ft ft ft", "(", "e", "E5", "µm", "²", "USD", "tempC", "degR", "dB", "%%"],
];

const awkwardTexts: readonly string[] = [
  ...[
    "",
    " ",
    "0",
    "-",
    "1e999",
    "-1e999",
    "1,2,3",
    "1.2.3",
    "０１２",
    "١٢",
    "½",
    "1\u00a0200 ft",
    "$",
    "€1",
    "$1e308",
  ],
  ...[
    "1 to 2",
    "2 to 1",
    "1 to 1 to 1 ft",
    "0 to 1e300 ft",
    "1 to 2 ft as lognormal",
    "1 to 2 ft as beta",
    "one of",
  ],
  ...[
    "one of 1 ft (50 %), 2 ft (50 %)",
    "one of 1 ft (60 %), 2 ft (60 %)",
    "5 % to 95 %",
    "0 to 100 %",
    "-5 to 5 degC",
  ],
  ...[
    "__proto__",
    "constructor",
    "toString",
    "hasOwnProperty",
    "../../etc/passwd",
    "{{this}}",
    "<script>x</script>",
  ],
  ...[
    "=1+1",
    "\u202e",
    "\ud800",
    "\u0000",
    "\ufeff",
    "🦪🦪",
    "e\u0301".repeat(30),
    "&a",
    "*a",
    "!!js/function x",
  ],
  ...[
    "02-29",
    "02-30",
    "13-01",
    "00-00",
    "2026-02-30",
    "24:00",
    "25:00",
    "07:60",
    "none",
    "true",
    "NO",
    "~",
    "a: b",
  ],
];

const mostCodePoint = 0x10ffff;
const surrogates = { first: 0xd800, count: 0x800 };

/** Any character but half a pair. The library's own makes a table of them all in each process, which takes over a second. */
const anyCharacter = fc.nat(mostCodePoint - surrogates.count).map(characterAt, placeOf);

function characterAt(place: number): string {
  return String.fromCodePoint(place < surrogates.first ? place : place + surrogates.count);
}

function placeOf(character: unknown): number {
  const number = typeof character === "string" ? (character.codePointAt(0) ?? 0) : 0;
  const place = number < surrogates.first ? number : number - surrogates.count;
  if (characterAt(place) !== character) throw new Error("no single character");
  return place;
}

export const anyText: fc.Arbitrary<string> = fc.oneof(
  { arbitrary: fc.constantFrom(...awkwardTexts), weight: 6 },
  { arbitrary: fc.string({ unit: anyCharacter, maxLength: 40 }), weight: 2 },
  { arbitrary: fc.nat(5000).map((length) => "x".repeat(length)), weight: 1 },
  { arbitrary: fc.nat(3000).map((length) => "9".repeat(length)), weight: 1 },
);

const quantityText = fc
  .record({ number: anyNumber, unit: fc.constantFrom(...units) })
  .map(({ number, unit }) => `${number} ${unit}`);

/** A value of any kind to stand where another was. */
export const anyValue: fc.Arbitrary<unknown> = fc.oneof(
  { arbitrary: anyNumber, weight: 3 },
  { arbitrary: quantityText, weight: 3 },
  { arbitrary: anyText, weight: 3 },
  {
    arbitrary: fc.constantFrom(null, true, false, [], {}, [[]], [null], Number.POSITIVE_INFINITY, Number.NaN),
    weight: 2,
  },
  { arbitrary: fc.nat(400).map(nested), weight: 1 },
  { arbitrary: fc.jsonValue({ maxDepth: 3 }), weight: 1 },
);

/** A list within a list within … */
function nested(depth: number): unknown {
  let value: unknown = 1;
  for (let level = 0; level < depth; level++) value = level % 2 === 0 ? [value] : { id: value };
  return value;
}
