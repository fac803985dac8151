import type { Request, RequestHandler } from "express";
import type { AccessSettings } from "./access/settings.js";

/** A page of another site asked for a change by the reader's browser. */
export class OtherSiteError extends Error {}

const allowed = ["same-origin", "none"];

/**
 * Lets only this server's own pages, and programs, change anything. Browsers say where a request comes from: those of
 * today by Sec-Fetch-Site, older ones and those without https by Origin.
 */
export function refuseOtherSites({ origins }: Pick<AccessSettings, "origins">): RequestHandler {
  return (request, _response, next) => {
    const isReading = request.method === "GET" || request.method === "HEAD";
    const site = request.get("Sec-Fetch-Site");
    const isAllowed = (site === undefined || allowed.includes(site)) && hasOwnOrigin(request, origins);
    if (!isReading && !isAllowed) throw new OtherSiteError();
    next();
  };
}

/** Programs send no Origin; "null" is that of a page that hides where it is from. */
function hasOwnOrigin({ headers }: Request, origins: ReadonlySet<string>): boolean {
  const { origin, host = "" } = headers;
  if (origin === undefined || origins.has(origin)) return true;
  if (!URL.canParse(origin)) return false;
  const asAsked = `${new URL(origin).protocol}//${host}`;
  return URL.canParse(asAsked) && new URL(asAsked).origin === origin;
}
