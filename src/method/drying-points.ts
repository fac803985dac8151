/** Published results on mussels in air, as the abstracts give them, beside which the report sets the model. */

export interface SizeClass {
  readonly name: string;
  readonly range: string;
  /** Middle of the published range, mm. */
  readonly lengthMm: number;
}

export const small: SizeClass = { name: "small", range: "10–18 mm", lengthMm: (10 + 18) / 2 };
export const large: SizeClass = { name: "large", range: "21–28 mm", lengthMm: (21 + 28) / 2 };

const coolDamp = { temperature: 10, humidity: 0.95 };
const warmDry = { temperature: 20, humidity: 0.5 };

/** Ricciardi and others 1995: zebra mussels alive after 10 days at 10 °C and 95 %. */
export const aliveAfterTenDays = {
  source: "ricciardi-1995",
  air: coolDamp,
  hours: 240,
  shares: [
    { size: large, share: 0.73 },
    { size: small, share: 0.1 },
  ],
} as const;

/** Ricciardi and others 1995: how long zebra mussels live at 20 °C and 50 %; large ones longer than was told. */
export const livesInWarmAir = {
  source: "ricciardi-1995",
  air: warmDry,
  lives: [
    { size: small, fromHours: 24, toHours: 72 },
    { size: large, fromHours: 120, toHours: undefined },
  ],
} as const;

/** Paukstis and others 1999: nearly all alive; the abstract gives no humidity. */
export const coldAir = {
  source: "paukstis-1999",
  air: { temperature: 5, humidity: 0.95 },
  hours: 60,
  size: small,
} as const;

/** Payne 1992: hours of frost that kill single mussels; `from` is absent where the source says "less than". */
export const frostTable: ReadonlyArray<{ temperature: number; from: number | undefined; to: number }> = [
  { temperature: 0, from: 48, to: 48 },
  { temperature: -1.5, from: 48, to: 48 },
  { temperature: -3, from: 5, to: 7 },
  { temperature: -10, from: undefined, to: 2 },
];
export const frostSource = "payne-1992";
