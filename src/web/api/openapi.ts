import { z } from "zod";
import type { Description } from "./operation.js";
import type { OperationGroup } from "./operations.js";
import { conflict, namedSchemas, refusal } from "./schemas.js";

/** The OpenAPI 3.1 document of the operations. */
/** @param needsKey whether a program has to send an access key */
export function openApiDocument(groups: readonly OperationGroup[], needsKey: boolean): object {
  const paths: Record<string, Record<string, object>> = {};
  for (const { title, operations } of groups) {
    for (const each of operations) {
      paths[each.path] = { ...paths[each.path], [each.method]: { tags: [title], ...operationObject(each) } };
    }
  }
  return {
    openapi: "3.1.0",
    info: {
      title: "Ramp & Rack",
      version: "1",
      description:
        "Studies of what keeping mussels out of a lake costs and what letting them in would cost. A study is read with an ETag and saved with it as If-Match, so that nobody's change is overwritten.",
    },
    tags: groups.map(({ title }) => ({ name: title })),
    paths,
    components: {
      schemas: componentSchemas(),
      ...(needsKey ? { securitySchemes: { accessKey: { type: "http", scheme: "bearer" } } } : {}),
    },
    ...(needsKey ? { security: [{ accessKey: [] }] } : {}),
  };
}

function operationObject(described: Description): object {
  const { operationId, summary, media, status, replyMedia, reply } = described;
  const tag = { ETag: { description: "Entity tag of the study", schema: { type: "string" } } };
  return {
    operationId,
    summary,
    parameters: parametersOf(described),
    ...(Object.keys(media).length > 0 ? { requestBody: { required: true, content: contentOf(media) } } : {}),
    responses: {
      [status]: {
        description: status === 201 ? "Made" : "Done",
        ...(described.isTagged ? { headers: tag } : {}),
        content: contentOf({ [replyMedia]: reply }),
      },
      ...(described.underWay
        ? {
            202: {
              description: "Being worked out: ask again after the seconds of Retry-After",
              content: contentOf({ "application/json": described.underWay }),
            },
          }
        : {}),
      ...(described.method === "get"
        ? { 304: { description: "Not changed since the ETag of If-None-Match" } }
        : {}),
      ...(described.needsMatch
        ? {
            412: refused("Someone else saved first; nothing was overwritten", conflict),
            428: refused("If-Match is missing", refusal),
          }
        : {}),
      default: refused("What was wrong with the request, or why it cannot be answered now", refusal),
    },
  };
}

function parametersOf({ parameters, query, needsMatch }: Description): object[] {
  const match = {
    name: "If-Match",
    in: "header",
    required: true,
    description: "The ETag with which the study was read",
    schema: { type: "string" },
  };
  return [
    ...Object.entries(parameters.shape).map(([name, schema]) => parameter(name, "path", schema)),
    ...Object.entries(query.shape).map(([name, schema]) => parameter(name, "query", schema)),
    ...(needsMatch ? [match] : []),
  ];
}

function parameter(name: string, place: "path" | "query", schema: z.core.$ZodType): object {
  const { $schema, description, ...shape } = z.toJSONSchema(schema, { io: "output" });
  return {
    name,
    in: place,
    required: isRequired(schema),
    ...(description ? { description } : {}),
    schema: shape,
  };
}

export const isRequired = (schema: z.core.$ZodType): boolean => !z.safeParse(schema, undefined).success;

const refused = (description: string, schema: z.ZodType) => ({
  description,
  content: contentOf({ "application/json": schema }),
});

function contentOf(media: Description["media"]): object {
  return Object.fromEntries(
    Object.entries(media).map(([type, schema]) => [type, { schema: schemaObject(schema) }]),
  );
}

/** A schema by its name if it has one, also as the items of a list. */
function schemaObject(schema: z.core.$ZodType): object {
  const id = namedSchemas.get(schema)?.id;
  if (id !== undefined) return { $ref: address(id) };
  if (schema instanceof z.ZodArray) return { type: "array", items: schemaObject(schema.element) };
  const { $schema, ...shape } = z.toJSONSchema(schema);
  return shape;
}

const address = (id: string) => `#/components/schemas/${id}`;

/** Answers are described as they are sent; a study as its author writes it. */
function componentSchemas(): object {
  const schemasFor = (io: "input" | "output") =>
    z.toJSONSchema(namedSchemas, { uri: address, io, unrepresentable: "any" }).schemas;
  const schemas = { ...schemasFor("output"), StudyDocument: schemasFor("input").StudyDocument };
  return Object.fromEntries(Object.entries(schemas).map(([id, schema]) => [id, withoutPlace(schema ?? {})]));
}

/** Within the document a schema needs neither its dialect nor its address. */
const withoutPlace = ({ $schema, $id, ...schema }: { $schema?: unknown; $id?: unknown }) => schema;
