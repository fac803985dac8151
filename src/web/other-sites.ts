import type { RequestHandler } from "express";

/** A page of another site asked for a change by the reader's browser. */
export class OtherSiteError extends Error {}

const allowed = ["same-origin", "none"];

/** Lets only this server's own pages, and programs, change anything: a browser says where a request comes from. */
export const refuseOtherSites: RequestHandler = (request, _response, next) => {
  const isReading = request.method === "GET" || request.method === "HEAD";
  const site = request.get("Sec-Fetch-Site");
  if (!isReading && site !== undefined && !allowed.includes(site)) throw new OtherSiteError();
  next();
};
