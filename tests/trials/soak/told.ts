import type { Seen } from "./people.js";

/** How often each status came: "80 × 200, 2 × 503". */
export function statusesTold(seen: readonly Seen[]): string {
  const byStatus = new Map<number, number>();
  for (const { status } of seen) byStatus.set(status, (byStatus.get(status) ?? 0) + 1);
  return [...byStatus].map(([status, count]) => `${count} × ${status}`).join(", ") || "none";
}

export function timesTold(seen: readonly Seen[]): string {
  const sorted = seen.map(({ milliseconds }) => milliseconds).sort((left, right) => left - right);
  const at = (share: number) =>
    (sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN).toFixed(0);
  return `median ${at(0.5)} ms, p95 ${at(0.95)} ms, longest ${at(1)} ms`;
}
