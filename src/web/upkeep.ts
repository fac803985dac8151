import { randomUUID } from "node:crypto";
import express, { type Express, type Request, type RequestHandler } from "express";
import type { Logger } from "pino";
import { programVersion } from "../assumptions/version.js";
import type { StoreConnection } from "../store/connection.js";
import { StoreError } from "../store/errors.js";
import { busySeconds } from "./explain.js";

interface UpkeepParts {
  readonly log: Logger;
  readonly connection: StoreConnection;
}

/** The application with what keeps it in order: a line in the log for each request, and its health. */
export function withUpkeep(application: Express, { log, connection }: UpkeepParts): Express {
  const app = express();
  app.disable("x-powered-by");
  app.use(requestLog(log));
  app.get("/health", (_request, response) => {
    const database = stateOf(connection);
    const isWell = database === "reachable";
    if (!isWell) response.set("Retry-After", String(busySeconds));
    response
      .status(isWell ? 200 : 503)
      .set("Cache-Control", "no-store")
      .json({ status: isWell ? "ok" : "fault", database, version: programVersion() });
  });
  app.use(application);
  return app;
}

function stateOf({ read }: StoreConnection): string {
  try {
    read((database) => database.prepare("SELECT 1").get());
    return "reachable";
  } catch (error) {
    if (error instanceof StoreError) return error.fault;
    throw error;
  }
}

/** Patterns in place of addresses, which hold names of studies; nothing of what was sent or asked for. */
function requestLog(log: Logger): RequestHandler {
  return (request, response, next) => {
    const start = performance.now();
    const id = randomUUID();
    response.set("X-Request-Id", id);
    response.once("close", () => {
      log.info({
        request: id,
        method: request.method,
        route: patternOf(request),
        status: response.statusCode,
        milliseconds: Math.round(performance.now() - start),
        ...(response.writableFinished ? {} : { left: true }),
      });
    });
    next();
  };
}

const patternOf = ({ route }: Request): string => {
  const path: unknown = route?.path;
  return typeof path === "string" ? path : "none";
};

/** A fault in the log: its kind and where it came about. What it says may hold names of a study, and is left out. */
export function faultEntry(error: unknown): object {
  if (!(error instanceof Error)) return { fault: typeof error };
  const frames = (error.stack ?? "").split("\n").filter((line) => /^\s+at /.test(line));
  return { fault: error.name, at: frames.slice(0, 8).map((line) => line.trim()) };
}
