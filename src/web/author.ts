import type { Request, Response } from "express";
import { z } from "zod";
import { visitor } from "../app/visitor.js";
import { allowedCharacters, isPrintable } from "../study/reading/characters.js";

const cookie = "author";
const longest = 200;

/** A name as it was typed. */
export const authorName = z
  .string()
  .trim()
  .max(longest, "at most 200 characters")
  .refine(isPrintable, allowedCharacters);
const yearInSeconds = 365 * 24 * 3600;

/** The name of who is signed in, or else the one that a person typed with the last save on this browser. */
export function authorOf(request: Pick<Request, "headers">): string {
  const { name } = visitor();
  if (name !== "") return name;
  const pairs = (request.headers.cookie ?? "").replaceAll("; ", "&");
  const found = (new URLSearchParams(pairs).get(cookie) ?? "").slice(0, longest);
  return isPrintable(found) ? found : "";
}

/** Keeps the name for the next form. */
export function rememberAuthor(response: Response, author: string): void {
  const value = encodeURIComponent(author.slice(0, longest));
  response.append("Set-Cookie", `${cookie}=${value}; Path=/; Max-Age=${yearInSeconds}; SameSite=Lax`);
}
