import type { Request, RequestHandler } from "express";
import type { AccessSettings } from "./settings.js";

/** A name with its port at most, or an IPv6 address in brackets. */
const hostHeader = /^(?:[a-z\d.-]+|\[[a-f\d:.]+\])(?::\d{1,5})?$/i;

/** @param names in small letters, without ports */
export const isKnownHost = (host: string, names: ReadonlySet<string>): boolean =>
  hostHeader.test(host) && names.has(host.replace(/:\d+$/, "").toLowerCase());

/**
 * Answers only to the names that are this server's. A page of another site whose name was made to lead here would
 * otherwise count as one of our own. A request that names two hosts is refused whatever they are, since a program before
 * this one may have gone by the other.
 */
export function knownHostsOnly({ names }: Pick<AccessSettings, "names">): RequestHandler {
  return (request, response, next) => {
    const host = hostOf(request);
    if (host !== undefined && isKnownHost(host, names)) {
      next();
      return;
    }
    response
      .status(host === undefined ? 400 : 421)
      .type("text/plain")
      .send(host === undefined ? severalHosts : unknownName);
  };
}

const severalHosts =
  "The request names no host, or more than one. Send one Host line, and a path that starts with a slash.\n";
const unknownName =
  "This server is not known by that name. Use the address that it printed when it started, or have RAMP_AND_RACK_ADDRESS name this one.\n";

/** The one host that a request names, in small letters: in its Host line, and in its address where that is a whole one. */
function hostOf({ rawHeaders, originalUrl }: Request): string | undefined {
  const hosts = rawHeaders.filter(
    (_each, index) => rawHeaders[index - 1]?.toLowerCase() === "host" && index % 2 === 1,
  );
  const [host, ...others] = hosts.map((each) => each.toLowerCase());
  if (host === undefined || others.length > 0) return undefined;
  if (originalUrl.startsWith("/")) return host;
  const named = /^http:\/\/([^/?#]*)/i.exec(originalUrl)?.[1]?.toLowerCase();
  return named === host ? host : undefined;
}
