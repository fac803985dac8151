import { parseCookie } from "cookie";
import type { Request, RequestHandler } from "express";
import { anyone, asVisitor, type Visitor } from "../../app/visitor.js";
import type { Door } from "./door.js";

/** Nobody is signed in. */
export class SignInNeededError extends Error {}

/** A key for reading cannot change anything. */
export class ReadingOnlyError extends Error {}

export const sessionCookie = "session";

export const sessionIdOf = ({ headers }: Pick<Request, "headers">): string | undefined =>
  parseCookie(headers.cookie ?? "")[sessionCookie];

/** The key that a program sends with its request. */
export const bearerKeyOf = ({
  authorization,
}: Pick<Request["headers"], "authorization">): string | undefined =>
  /^Bearer +(\S+)$/i.exec(authorization ?? "")?.[1];

/** What whoever is not signed in may see. */
const openToAll = /^\/(?:sign-in|health)$/;

/** What a reader may send: none of it is kept. */
const keptNowhere = /^\/(?:sign-out|verify|api\/check|studies\/[^/]+\/odds\/cancel)$/;

/** Lets in who has a key, or everyone at this machine where none are set; the rest of the request is in their name. */
export function gate(door: Door): RequestHandler {
  return async (request, response, next) => {
    if (openToAll.test(request.path)) {
      next();
      return;
    }
    const who = await visitorFor(door, request);
    if (who) {
      const isReading = request.method === "GET" || request.method === "HEAD";
      if (who.role === "read" && !isReading && !keptNowhere.test(request.path)) throw new ReadingOnlyError();
      asVisitor(who, next);
      return;
    }
    response.set("Cache-Control", "no-store");
    if (!asksForPage(request)) throw new SignInNeededError();
    response.redirect(303, `/sign-in?${new URLSearchParams({ next: request.originalUrl })}`);
  };
}

async function visitorFor(door: Door, request: Request): Promise<Visitor | undefined> {
  if (!door.isLocked()) return anyone;
  const key = bearerKeyOf(request.headers);
  if (key !== undefined) return door.bearer(key, request.ip ?? "");
  const id = sessionIdOf(request);
  return id === undefined ? undefined : door.visitorOf(id);
}

const asksForPage = (request: Request) =>
  request.method === "GET" &&
  !request.path.startsWith("/api") &&
  !request.path.endsWith(".json") &&
  request.accepts(["html", "json"]) === "html";
