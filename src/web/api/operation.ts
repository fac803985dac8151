import type { Request, Response } from "express";
import { z } from "zod";
import type { StudyEntry } from "../../app/study-entry.js";
import { InputError, problemsOf } from "../../study/reading/problems.js";
import { decodeStudy } from "../../study/reading/study-bytes.js";
import { askAgainSeconds } from "../pages/awaited-pages.js";
import { readerSignal } from "../reader-gone.js";
import { entityTag, isHeld, MatchMissingError } from "./entity-tag.js";
import { sentFields } from "./sent-fields.js";

/** What the body of a request is. */
interface BodyKind<Body> {
  /** Its media types, each with its schema; empty where there is no body. */
  readonly media: Readonly<Record<string, z.ZodType>>;
  readonly read: (bytes: Uint8Array) => Body;
}

/** What is told of an operation: its route and its part of the OpenAPI document both come from here. */
export interface Description {
  readonly method: "get" | "post" | "put" | "delete";
  /** With its parameters in braces: /api/studies/{id}. */
  readonly path: string;
  readonly operationId: string;
  readonly summary: string;
  readonly parameters: z.ZodObject;
  readonly query: z.ZodObject;
  readonly media: BodyKind<unknown>["media"];
  /** Whether the writer must say by If-Match which revision he had before him. */
  readonly needsMatch: boolean;
  readonly status: 200 | 201;
  readonly reply: z.ZodType;
  readonly replyMedia: "application/json" | TextMedia;
  /** Whether the answer has the entity tag of a study. */
  readonly isTagged: boolean;
  /** What is told while the answer is being worked out; absent where it always comes at once. */
  readonly underWay: z.ZodType | undefined;
}

type TextMedia = "text/plain" | "text/csv";

export interface Operation extends Description {
  /** @param body its bytes, none where none came */
  readonly handle: (request: Request, response: Response, body: Uint8Array) => Promise<void>;
}

interface Spec<Parameters extends z.ZodObject, Query extends z.ZodObject, Body, Reply extends z.ZodType> {
  readonly method: Description["method"];
  readonly path: string;
  readonly operationId: string;
  readonly summary: string;
  readonly parameters: Parameters;
  readonly query: Query;
  readonly body: BodyKind<Body>;
  readonly needsMatch?: true;
  readonly status?: 201;
  readonly reply: Reply;
  /** The media type of a reply that is a text. */
  readonly text?: TextMedia;
  readonly isTagged?: true;
  readonly underWay?: z.ZodType;
  readonly answer: (call: {
    readonly parameters: z.output<Parameters>;
    readonly query: z.output<Query>;
    readonly body: Body;
    /** If-Match as it came. */
    readonly match: string | undefined;
    /** Given when the asker leaves before the answer. */
    readonly signal: AbortSignal;
  }) => Answered<z.input<Reply>> | Promise<Answered<z.input<Reply>>>;
}

interface Answer<Reply> {
  readonly reply: Reply;
  /** The study whose entity tag goes with it. */
  readonly entry?: StudyEntry;
  /** Address of what was made. */
  readonly location?: string;
}

/** The answer, or how far the work is that will bring it. */
type Answered<Reply> = Answer<Reply> | { readonly underWay: object };

/** An operation from its description and what it does. */
export function operation<
  Parameters extends z.ZodObject,
  Query extends z.ZodObject,
  Body,
  Reply extends z.ZodType,
>(spec: Spec<Parameters, Query, Body, Reply>): Operation {
  const {
    body: kind,
    answer,
    text,
    isTagged = false,
    needsMatch = false,
    status = 200,
    underWay,
    ...rest
  } = spec;
  return {
    ...rest,
    status,
    needsMatch,
    isTagged,
    underWay,
    media: kind.media,
    replyMedia: text ?? "application/json",
    handle: async (request, response, bytes) => {
      const match = request.get("If-Match");
      if (needsMatch && match === undefined) throw new MatchMissingError();
      const answered = await answer({
        parameters: parsed(spec.parameters, request.params, "The address"),
        query: parsed(spec.query, request.query, "The address"),
        body: kind.read(bytes),
        match,
        signal: readerSignal(response),
      });
      response.set("Cache-Control", "no-cache");
      if ("underWay" in answered) {
        response.status(202).set("Retry-After", String(askAgainSeconds)).json(answered.underWay);
        return;
      }
      const { reply, entry, location } = answered;
      if (entry) response.set("ETag", entityTag(entry));
      // Express leaves out the comparison where a program's own fetch adds "no-cache" to its If-None-Match.
      if (entry && spec.method === "get" && isHeld(request.get("If-None-Match"), entityTag(entry))) {
        response.status(304).end();
        return;
      }
      if (location !== undefined) response.location(location);
      response.status(status);
      if (text) response.type(text).send(Buffer.from(String(reply)));
      else response.json(reply);
    },
  };
}

function parsed<Schema extends z.ZodType>(schema: Schema, value: unknown, subject: string): z.output<Schema> {
  const result = schema.safeParse(value);
  if (result.success) return result.data;
  throw new InputError(subject, problemsOf(result.error.issues, value));
}

export const noParameters = sentFields({});

export const noBody: BodyKind<undefined> = { media: {}, read: () => undefined };

/** The text of a study, taken to the byte. @param document schema of a study that is JSON */
export function studyBody(document: z.ZodType): BodyKind<string> {
  const text = z.string();
  return {
    media: { "application/yaml": text, "application/json": document },
    read: (bytes) => decodeStudy(bytes, "The request"),
  };
}

export function jsonBody<Schema extends z.ZodType>(schema: Schema): BodyKind<z.output<Schema>> {
  return {
    media: { "application/json": schema },
    read: (bytes) => parsed(schema, jsonIn(bytes), "The request"),
  };
}

function jsonIn(bytes: Uint8Array): unknown {
  try {
    return JSON.parse(decodeStudy(bytes, "The request"));
  } catch (error) {
    if (error instanceof InputError) throw error;
    const problem = { path: "the body", found: "no JSON", allowed: "JSON", remedy: "Correct the text." };
    throw new InputError("The request", [problem]);
  }
}
