import express, { type ErrorRequestHandler, type Express } from "express";
import { linkedAssets } from "../../report/document/render-page.js";
import { largestStudyBytes } from "../../study/reading/read.js";
import { NotFoundError } from "../explain.js";
import { renderPage } from "../render.js";
import { apiPage } from "./api-page.js";
import { openApiDocument } from "./openapi.js";
import type { OperationParts } from "./operation-parts.js";
import { operationGroups } from "./operations.js";
import { refusalOf } from "./refusals.js";

/**
 * What the browser can do, for programs; with its description and a page about it.
 * `report` is told of faults that are not the asker's
 */
export function addApi(
  app: Express,
  {
    report,
    needsKey,
    ...parts
  }: OperationParts & { readonly report: (error: unknown) => void; readonly needsKey: () => boolean },
): void {
  const groups = operationGroups(parts);
  const operations = groups.flatMap((group) => group.operations);
  // Any type of content: a study is taken to the byte. One byte more, so that the reader's own message is given.
  const bytes = express.raw({ type: () => true, limit: largestStudyBytes + 1 });
  for (const { method, path, handle } of operations) {
    app[method](path.replace(/\{(\w+)\}/g, ":$1"), bytes, async (request, response) => {
      const body: unknown = request.body;
      await handle(request, response, body instanceof Uint8Array ? body : new Uint8Array());
    });
  }
  app.get("/api/openapi.json", (_request, response) => {
    response.json(openApiDocument(groups, needsKey()));
  });
  app.get("/api", (_request, response) => {
    response.send(renderPage("api", { ...apiPage(groups), needsKey: needsKey(), assets: linkedAssets }));
  });
  app.use("/api", (_request, _response) => {
    throw new NotFoundError();
  });
  app.use("/api", refusing(report));
}

function refusing(report: (error: unknown) => void): ErrorRequestHandler {
  return (error: unknown, _request, response, _next) => {
    const { status, headers, body } = refusalOf(error);
    if (status === 500) report(error);
    response.status(status).set(headers).json(body);
  };
}
