import { describe, expect, it } from "vitest";
import { BusyError } from "../../src/app/run-queue.js";
import { BrowserError } from "../../src/report/print/browser.js";
import { PrinterBusyError } from "../../src/report/print/printer.js";
import { StoreError } from "../../src/store/errors.js";
import { TooManyTriesError } from "../../src/web/access/slowing.js";
import { explain } from "../../src/web/explain.js";
import { QueueFullError, TookTooLongError } from "../../src/workers/thread-pool.js";

describe("an upload that ends with its connection", () => {
  it("is no fault of the server", () => {
    // As multer says it: https://github.com/expressjs/multer, lib/make-middleware.js
    expect(explain(new Error("Request aborted"))).toMatchObject({
      status: 400,
      title: "The upload could not be read; nothing was kept",
    });
  });

  it("is not what other faults are taken for", () => {
    expect(explain(new TypeError("Unexpected end of form")).status).toBe(500);
    expect(explain(new Error("reading")).status).toBe(500);
  });
});

describe("a refusal for now", () => {
  it.each([
    new PrinterBusyError(),
    new BusyError(),
    new QueueFullError(),
    new TookTooLongError(),
    new BrowserError("no browser"),
    new StoreError("full", "the disk is full"),
    new TooManyTriesError(60),
  ])("says when to ask again: %s", (error) => {
    const { status, headers } = explain(error);
    expect([429, 503]).toContain(status);
    expect(Number(headers["Retry-After"])).toBeGreaterThan(0);
  });
});
