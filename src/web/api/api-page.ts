import { isRequired } from "./openapi.js";
import type { Operation } from "./operation.js";
import type { OperationGroup } from "./operations.js";

/** The operations in plain words, for a person who writes a program. */
export function apiPage(groups: readonly OperationGroup[]): object {
  return {
    title: "For programs",
    groups: groups.map(({ title, operations }) => ({ title, operations: operations.map(operationRow) })),
  };
}

function operationRow({ method, path, summary, query, media, needsMatch }: Operation) {
  const sends = Object.keys(media).length > 0 ? Object.keys(media).join(" or ") : "";
  return {
    method: method.toUpperCase(),
    path,
    summary,
    needs: namesIn(query, true),
    mayHave: namesIn(query, false),
    sends,
    needsMatch,
  };
}

const namesIn = ({ shape }: Operation["query"], required: boolean) =>
  Object.entries(shape)
    .filter(([, schema]) => isRequired(schema) === required)
    .map(([name]) => name)
    .join(", ");
