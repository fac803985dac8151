import type { Assumed } from "../assumed.js";
import { once } from "../computed-once.js";

export const disposalIds = ["disposal.tipping-fee", "disposal.haulage"] as const;
export const shellShareId = "shell.shell-share";
/** Behind the disposal of shells alone. */
export const shellDisposalIds = [...disposalIds, shellShareId] as const;

/** Money for a kilogram of shells and mussels taken away; read once, since every month of every part may need it. */
export function disposalRateOf(assumed: Assumed): () => number {
  const [tipping, haulage] = disposalIds;
  return once(() => assumed(tipping) + assumed(haulage));
}
