import type { RequestHandler } from "express";

/** An upload of which no reader could tell where its parts begin. */
class BoundaryMissingError extends Error {}

/** A type with its parameters, as RFC 9110 (8.3.1) writes them. */
const token = "[\\w!#$%&'*+.^`|~-]+";
const parameter = `\\s*;\\s*${token}=(?:"[^"]*"|${token})`;
/** What stands before empty parameters, which the standard allows and the readers of uploads pass by. */
const wholeType = new RegExp(`^\\s*(multipart/${token}(?:${parameter})*)[\\s;]*$`, "i");
const boundary = /;\s*boundary=(?:"[^"]|[^\s"])/i;

/** Refuses uploads whose type is not whole, which their readers would pass by as if nothing had been sent. */
export const refuseWithoutBoundary: RequestHandler = (request, _response, next) => {
  const type = request.get("Content-Type") ?? "";
  if (/^\s*multipart\//i.test(type)) {
    const [, whole] = wholeType.exec(type) ?? [];
    if (whole === undefined || !boundary.test(type)) throw new BoundaryMissingError();
    request.headers["content-type"] = whole;
  }
  next();
};

/** What the readers of uploads, multer and busboy within it, say of a body that is cut off or not as its type tells. */
const saidOfUploads =
  /^(?:Multipart: Boundary not found|Malformed (?:part header|content type|urlencoded form)|(?:Unsupported|Missing) content.type|Unexpected end of (?:form|file)|Request aborted)/i;

/** Whether an error is that of an upload that could not be read: those readers have no class of errors for it. */
export const isBrokenUpload = (error: unknown): boolean =>
  error instanceof BoundaryMissingError ||
  (error instanceof Error && error.constructor === Error && saidOfUploads.test(error.message));
