import multer from "multer";
import { BusyError } from "../app/run-queue.js";
import { SigningKeyError } from "../issue/signing-key.js";
import { BrowserError } from "../report/print/browser.js";
import { TooWideError } from "../report/print/pdf.js";
import { PrinterBusyError } from "../report/print/printer.js";
import { ConflictError, DeletedStudyError, StoreError, UnknownStudyError } from "../store/errors.js";
import { InputError } from "../study/reading/problems.js";
import { largestStudyBytes } from "../study/reading/read.js";
import { QueueFullError, TookTooLongError } from "../workers/thread-pool.js";
import { WrongKeyError } from "./access/door.js";
import { ReadingOnlyError, SignInNeededError } from "./access/gate.js";
import { TooManyTriesError } from "./access/slowing.js";
import { isBrokenUpload } from "./broken-upload.js";
import { explainDamaged } from "./explain-damaged.js";
import type { Explained } from "./explained.js";
import { explainGoneForm } from "./gone-form.js";
import { OtherSiteError } from "./other-sites.js";

/** No page of that address. */
export class NotFoundError extends Error {}

export function explain(error: unknown): Explained {
  const explained =
    explainReader(error) ??
    explainAccess(error) ??
    explainKeeping(error) ??
    explainDamaged(error) ??
    explainGoneForm(error) ??
    explainMachine(error);
  const headers = explained.status === 503 ? { "Retry-After": String(busySeconds) } : {};
  return { headers, problems: [], advice: [], links: [], actions: [], ...explained };
}

type PartialExplanation = Pick<Explained, "status" | "title"> & Partial<Explained>;

function explainReader(error: unknown): PartialExplanation | undefined {
  if (error instanceof InputError) {
    return { status: 400, title: `${error.subject} cannot be used yet`, problems: error.problems };
  }
  if (error instanceof NotFoundError || error instanceof UnknownStudyError) {
    return { status: 404, title: "There is no such page or study" };
  }
  if (error instanceof OtherSiteError) {
    return { status: 403, title: "A page of another site asked for this change; nothing was changed" };
  }
  if (isTooLarge(error)) {
    const allowed = `at most ${(largestStudyBytes / 1024 / 1024).toFixed(1)} MB`;
    const problem = {
      path: "the file",
      found: "a larger file",
      allowed,
      remedy: "Check that this is the right file.",
    };
    return { status: 400, title: "The file is too large for a study", problems: [problem] };
  }
  if (isBrokenUpload(error)) {
    return {
      status: 400,
      title: "The upload could not be read; nothing was kept",
      advice: [
        "It was cut off on its way, or is no form with a file (multipart/form-data with a boundary). Send the file again.",
      ],
    };
  }
  if (clientStatus(error)) return { status: 400, title: "The request could not be read" };
  return undefined;
}

function explainAccess(error: unknown): PartialExplanation | undefined {
  if (error instanceof SignInNeededError || error instanceof WrongKeyError) {
    return {
      status: 401,
      headers: { "WWW-Authenticate": "Bearer" },
      title: "Sign in first; nothing was changed",
      advice: [
        "Sign in in another tab, then load this page again: what you entered is sent once more. A program sends its access key as Authorization: Bearer.",
      ],
      links: [{ href: "/sign-in", label: "Sign in" }],
    };
  }
  if (error instanceof ReadingOnlyError) {
    return {
      status: 403,
      title: "Your access key is for reading; nothing was changed",
      advice: ["Whoever keeps this server can give you a key for editing."],
    };
  }
  if (error instanceof TooManyTriesError) {
    return {
      status: 429,
      headers: { "Retry-After": String(error.waitSeconds) },
      title: "The access key is not right; nothing was changed",
      advice: [
        `Many failed tries wait already. A right key is let in at any time; the next in ${error.waitSeconds} s.`,
      ],
    };
  }
  return undefined;
}

function explainKeeping(error: unknown): PartialExplanation | undefined {
  if (error instanceof ConflictError) return explainConflict(error);
  if (error instanceof DeletedStudyError) {
    const { id, name, stateChangedAt } = error.study;
    return {
      status: 410,
      title: `“${name}” was deleted on ${stateChangedAt.slice(0, 10)}`,
      advice: ["It is kept with all its revisions and can be read and changed again once it is recovered."],
      actions: [{ action: `/studies/${id}/recover`, label: "Recover this study" }],
    };
  }
  if (error instanceof StoreError) {
    return {
      status: 503,
      title: "The studies cannot be reached now",
      advice: [error.message, "The examples can be read meanwhile. Once that is done, load this page again."],
    };
  }
  return undefined;
}

function explainConflict({ expected, latest }: ConflictError): PartialExplanation {
  const { id, name, revision, author, savedAt, note } = latest;
  const by = author === "" ? "Someone" : author;
  const what = note === "" ? "" : ` (${note})`;
  return {
    status: 409,
    title: `“${name}” was changed meanwhile`,
    advice: [
      `${by} saved revision ${revision} on ${savedAt.slice(0, 10)} at ${savedAt.slice(11, 16)} UTC${what}. Your change was made to revision ${expected} and is not kept yet; nothing was overwritten.`,
    ],
    links: [
      { href: `/studies/${id}`, label: `Revision ${revision}, the latest` },
      { href: `/studies/${id}/revisions/${expected}/study`, label: `File of revision ${expected}` },
    ],
  };
}

function explainMachine(error: unknown): PartialExplanation {
  if (error instanceof TooWideError) return { status: 422, title: error.message };
  if (error instanceof BrowserError || error instanceof SigningKeyError) {
    return { status: 503, title: error.message };
  }
  if (error instanceof PrinterBusyError) {
    return {
      status: 503,
      title: "Other reports are being printed; ask again in half a minute",
    };
  }
  if (error instanceof BusyError) {
    return { status: 503, title: "Other studies are being drawn; ask again in half a minute" };
  }
  if (error instanceof QueueFullError) {
    return { status: 503, title: "Many studies are being worked out; ask again in half a minute" };
  }
  if (error instanceof TookTooLongError) {
    return {
      status: 503,
      title: "This study could not be worked out in the time allowed",
      advice: ["The server may be busy: ask again in half a minute. The command line has no such limit."],
    };
  }
  return { status: 500, title: "Something went wrong on our side; nothing you entered was changed" };
}

/** A run takes a few seconds, and a few may wait; whatever else is out of order is seldom mended sooner. */
export const busySeconds = 30;

function isTooLarge(error: unknown): boolean {
  if (error instanceof multer.MulterError) return error.code === "LIMIT_FILE_SIZE";
  return typeof error === "object" && error !== null && "type" in error && error.type === "entity.too.large";
}

function clientStatus(error: unknown): boolean {
  if (error instanceof multer.MulterError) return true;
  const status = typeof error === "object" && error !== null && "status" in error ? error.status : undefined;
  return typeof status === "number" && status >= 400 && status < 500;
}
