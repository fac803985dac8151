import { expect } from "vitest";
import type { Operation } from "../../../src/web/api/operation.js";
import { operationGroups } from "../../../src/web/api/operations.js";
import { serving } from "../serving.js";

export const draft = "study: { name: Our lake } # 湖\r\n";

/** Descriptions are read, nothing is asked of them. */
const notAsked = {
  find: () => expect.fail("not asked"),
  knownOdds: () => expect.fail("not asked"),
  drawn: () => expect.fail("not asked"),
  drawnWithin: () => expect.fail("not asked"),
};

/** Asks as a program does, and holds each answer to the schema that describes it. */
export async function program(place?: string) {
  const { ask, studies, parts, connection } = await serving(place);
  const operations = operationGroups({ ...parts, ...notAsked }).flatMap((group) => group.operations);
  const send = async (
    method: string,
    path: string,
    { body, match }: { body?: string; match?: string } = {},
  ) => {
    const headers = match === undefined ? {} : { "If-Match": match };
    const response = await ask(path, { method, headers, ...(body === undefined ? {} : { body }) });
    const reply: unknown = response.headers.get("content-type")?.includes("json")
      ? await response.json()
      : await response.text();
    if (response.ok) described(operations, method, path).reply.parse(reply);
    return { status: response.status, etag: response.headers.get("etag") ?? "", reply, response };
  };
  return { send, ask, studies, connection };
}

function described(operations: readonly Operation[], method: string, path: string): Operation {
  const [address = ""] = path.split("?");
  const found = operations.find(
    (each) =>
      each.method === method.toLowerCase() &&
      new RegExp(`^${each.path.replace(/\{\w+\}/g, "[^/]+")}$`).test(address),
  );
  if (!found) throw new Error(`${method} ${path} is not described`);
  return found;
}
