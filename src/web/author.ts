import type { Request, Response } from "express";

const cookie = "author";
const longest = 200;
const yearInSeconds = 365 * 24 * 3600;

/** The name that a person typed with the last save on this browser. */
export function authorOf(request: Pick<Request, "headers">): string {
  const pairs = (request.headers.cookie ?? "").replaceAll("; ", "&");
  return (new URLSearchParams(pairs).get(cookie) ?? "").slice(0, longest);
}

/** Keeps the name for the next form. */
export function rememberAuthor(response: Response, author: string): void {
  const value = encodeURIComponent(author.slice(0, longest));
  response.append("Set-Cookie", `${cookie}=${value}; Path=/; Max-Age=${yearInSeconds}; SameSite=Lax`);
}
