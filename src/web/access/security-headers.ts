import type { RequestHandler, Response } from "express";
import helmet from "helmet";
import type { AccessSettings } from "./settings.js";

/** Pages load what this server serves under its own name, and nothing that stands in the page itself. */
const pagePolicy = {
  defaultSrc: ["'none'"],
  scriptSrc: ["'self'"],
  styleSrc: ["'self'"],
  fontSrc: ["'self'"],
  imgSrc: ["'self'"],
  connectSrc: ["'self'"],
  formAction: ["'self'"],
  baseUri: ["'none'"],
  frameAncestors: ["'none'"],
};

/** What browsers are told to refuse on every page. */
export function securityHeaders({ isSecure }: Pick<AccessSettings, "isSecure">): RequestHandler {
  return helmet({
    contentSecurityPolicy: { useDefaults: false, directives: pagePolicy },
    strictTransportSecurity: isSecure,
    // Under "no-referrer" a browser hides the origin of our own forms as well.
    referrerPolicy: { policy: "same-origin" },
    // Both are ignored, with a complaint, where readers come without https.
    crossOriginOpenerPolicy: isSecure,
    originAgentCluster: isSecure,
    xFrameOptions: { action: "deny" },
  });
}

/** A page to be taken away stands by itself, with style and fonts in it; it can do nothing. */
const loneFilePolicy = [
  "default-src 'none'",
  "style-src 'unsafe-inline'",
  "font-src data:",
  "img-src data:",
  "frame-ancestors 'none'",
  "sandbox",
].join("; ");

/** Viewers of PDFs are pages of the browser's own, which the policy for pages would break. */
const pdfPolicy = "frame-ancestors 'none'";

/** The policy for a file that was made of a study, by its media type. */
export function withFilePolicy(response: Response, type: string): Response {
  return response.set("Content-Security-Policy", type.includes("pdf") ? pdfPolicy : loneFilePolicy);
}
