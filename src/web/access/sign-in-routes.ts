import express, { type CookieOptions, type Express, type Request, type Response } from "express";
import { z } from "zod";
import { linkedAssets } from "../../report/document/render-page.js";
import { ownAddress } from "../own-address.js";
import { renderPage } from "../render.js";
import { type Door, WrongKeyError } from "./door.js";
import { sessionCookie, sessionIdOf } from "./gate.js";
import { sessionLimits } from "./sessions.js";
import type { AccessSettings } from "./settings.js";
import { TooManyTriesError } from "./slowing.js";

const text = z.string().max(2000).catch("");
const form = z.object({ name: text, key: text, next: text });

/** Signing in with a name and its key, and signing out. */
export function addSignIn(app: Express, door: Door, { isSecure }: Pick<AccessSettings, "isSecure">): void {
  const cookie: CookieOptions = { httpOnly: true, sameSite: "strict", path: "/", secure: isSecure };
  app.get("/sign-in", (request, response) => {
    const next = ownAddress(request.query.next);
    if (!door.isLocked() || isSignedIn(door, request)) response.redirect(303, next);
    else if (comesFromElsewhere(request)) show(response, { next, again: request.originalUrl });
    else show(response, { next });
  });
  app.post("/sign-in", express.urlencoded({ extended: false, limit: "10kb" }), async (request, response) => {
    const { name, key, next } = form.parse(request.body ?? {});
    try {
      const id = await door.signIn(name.trim(), key.trim(), request.ip ?? "");
      response.cookie(sessionCookie, id, { ...cookie, maxAge: sessionLimits.whole });
      response.redirect(303, ownAddress(next));
    } catch (error) {
      const refused = refusal(error);
      if (error instanceof TooManyTriesError) response.set("Retry-After", String(error.waitSeconds));
      response.status(refused.status);
      show(response, { next: ownAddress(next), name, wrong: refused.text });
    }
  });
  app.post("/sign-out", (request, response) => {
    const id = sessionIdOf(request);
    if (id !== undefined) door.signOut(id);
    response.clearCookie(sessionCookie, cookie).redirect(303, "/sign-in");
  });
}

interface SignInView {
  readonly next: string;
  readonly name?: string;
  readonly wrong?: string;
  /** The page to ask for again at once. */
  readonly again?: string;
}

function show(response: Response, { next, name = "", wrong = "", again = "" }: SignInView): void {
  const view = { title: "Sign in", assets: linkedAssets, next, name, wrong, again };
  response.set("Cache-Control", "no-store").send(renderPage("sign-in", view));
}

function isSignedIn(door: Door, request: Request): boolean {
  const id = sessionIdOf(request);
  return id !== undefined && door.visitorOf(id) !== undefined;
}

/** A browser that follows a link from a letter keeps the cookie back; asked by this page it sends it. */
const comesFromElsewhere = (request: Request) => request.get("Sec-Fetch-Site") === "cross-site";

function refusal(error: unknown): { readonly status: number; readonly text: string } {
  if (error instanceof WrongKeyError) {
    return { status: 401, text: "The name or the key is not right." };
  }
  if (error instanceof TooManyTriesError) {
    const text = `The name or the key is not right. Many failed tries wait already; the next in ${error.waitSeconds} s.`;
    return { status: 429, text };
  }
  throw error;
}
