import type { Response } from "express";

/** The reader closed the connection before the answer. */
export class ReaderGoneError extends Error {}

/** Aborted when the reader leaves before the answer. */
export function readerSignal(response: Response): AbortSignal {
  const control = new AbortController();
  response.once("close", () => {
    if (!response.writableFinished) control.abort(new ReaderGoneError());
  });
  return control.signal;
}
