import type { RequestHandler } from "express";
import type { AccessSettings } from "./settings.js";

/** A name with its port at most, or an IPv6 address in brackets. */
const hostHeader = /^(?:[a-z\d.-]+|\[[a-f\d:.]+\])(?::\d{1,5})?$/i;

/** @param names in small letters, without ports */
export const isKnownHost = (host: string, names: ReadonlySet<string>): boolean =>
  hostHeader.test(host) && names.has(host.replace(/:\d+$/, "").toLowerCase());

/**
 * Answers only to the names that are this server's. A page of another site whose name was made to lead here would
 * otherwise count as one of our own.
 */
export function knownHostsOnly({ names }: Pick<AccessSettings, "names">): RequestHandler {
  return (request, response, next) => {
    if (isKnownHost(request.headers.host ?? "", names)) {
      next();
      return;
    }
    response
      .status(421)
      .type("text/plain")
      .send(
        "This server is not known by that name. Use the address that it printed when it started, or have RAMP_AND_RACK_ADDRESS name this one.\n",
      );
  };
}
