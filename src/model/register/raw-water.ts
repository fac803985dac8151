import { type Expected, hours, number, positiveShare, share } from "./expected.js";

const labour = hours({ from: 0, to: 1000 });

/** Strainers, coolers and orifices of small lines, and the shells that come down them. */
export const rawWaterAssumptions = {
  "raw-water.carried-share": share,
  "raw-water.piece-spread": number({ above: 0, to: 10 }),
  "raw-water.piece-width": positiveShare,
  "raw-water.blinded-share": positiveShare,
  "raw-water.strainer-hours": labour,
  "raw-water.strainer-outage": labour,
  "raw-water.spare-tubes": positiveShare,
  "raw-water.cooler-hours": labour,
  "raw-water.cooler-outage": labour,
  "raw-water.orifice-hours": labour,
  "raw-water.most-cleanings": number({ above: 0, to: 100 }),
} as const satisfies Record<string, Expected>;
