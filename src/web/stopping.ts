import type { Server } from "node:http";

interface StopSettings {
  /** Milliseconds in which requests under way may end. */
  readonly patienceMilliseconds: number;
  /** Puts away what the server worked with, after its last request. */
  readonly putAway: () => Promise<void>;
}

/** Takes no more requests, lets those under way end within the time given, then puts everything away. */
export async function stopServing(
  server: Server,
  { patienceMilliseconds, putAway }: StopSettings,
): Promise<void> {
  const closed = new Promise<void>((resolve) => {
    server.close(() => resolve());
  });
  server.closeIdleConnections();
  // A connection kept alive after its last answer would hold up the end for seconds.
  const tidying = setInterval(() => server.closeIdleConnections(), tidyingMilliseconds);
  const patience = setTimeout(() => server.closeAllConnections(), patienceMilliseconds);
  await closed;
  clearInterval(tidying);
  clearTimeout(patience);
  await putAway();
}

const tidyingMilliseconds = 50;

export const usualPatience = 10_000;
