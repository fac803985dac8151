import type { RequestHandler } from "express";

/** A host that is nobody's, against which addresses are read as a browser reads them. */
const ownOrigin = "http://here.invalid";

/** What follows the host in an address of this server; "/" for any other, and for what is none. */
export function ownAddress(address: unknown): string {
  if (typeof address !== "string" || !URL.canParse(address, ownOrigin)) return "/";
  const { origin, pathname, search, hash } = new URL(address, ownOrigin);
  // Two slashes at the start would name another server.
  return origin === ownOrigin ? `/${pathname.replace(/^\/+/, "")}${search}${hash}` : "/";
}

/** Whatever a route makes of what was sent to it: no answer leads a reader to another server. */
export const leadNowhereElse: RequestHandler = (_request, response, next) => {
  const location = response.location.bind(response);
  response.location = (address) => location(ownAddress(address));
  next();
};
