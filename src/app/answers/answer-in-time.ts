type InTime<Found> = { readonly answer: Found } | "under way";

/** How long work goes on for a reader who was told to ask again and has not. */
const lingerMilliseconds = 10_000;

/** An answer if it comes within some milliseconds; the work goes on for a while for the reader to come back. */
export async function answerInTime<Found>(
  ask: (signal: AbortSignal) => Promise<Found>,
  milliseconds: number,
  signal: AbortSignal,
): Promise<InTime<Found>> {
  const ending = new AbortController();
  const answer = ask(AbortSignal.any([signal, ending.signal]));
  const found = await within(milliseconds, answer);
  if (found === "under way") {
    const linger = setTimeout(() => ending.abort(new Error("nobody came back")), lingerMilliseconds).unref();
    answer.catch(() => undefined).finally(() => clearTimeout(linger));
  }
  return found;
}

export function within<Found>(milliseconds: number, answer: Promise<Found>): Promise<InTime<Found>> {
  let patience: NodeJS.Timeout | undefined;
  const late = new Promise<"under way">((resolve) => {
    patience = setTimeout(() => resolve("under way"), milliseconds);
  });
  return Promise.race([answer.then((found) => ({ answer: found })), late]).finally(() =>
    clearTimeout(patience),
  );
}

/** How long a page waits for what takes longer, before it shows the rest and says that this is being worked out. */
export const patienceMilliseconds = 150;
