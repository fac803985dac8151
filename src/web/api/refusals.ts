import type { z } from "zod";
import type { ListedStudy } from "../../app/study-entry.js";
import { ConflictError } from "../../store/errors.js";
import { explain } from "../explain.js";
import { revisionAddress, studyAddress } from "./addresses.js";
import { MatchFailedError, MatchMissingError } from "./entity-tag.js";
import type { conflict, refusal } from "./schemas.js";

interface Refusal {
  readonly status: number;
  readonly headers: Readonly<Record<string, string>>;
  readonly body: z.output<typeof refusal> | z.output<typeof conflict>;
}

/** What a program is told of an error. */
export function refusalOf(error: unknown): Refusal {
  if (error instanceof ConflictError || error instanceof MatchFailedError) return conflictOf(error);
  if (error instanceof MatchMissingError) {
    return {
      status: 428,
      headers: {},
      body: {
        title: "The request does not say which revision it changes",
        problems: [],
        advice: ["Send the ETag with which you read the study as If-Match."],
      },
    };
  }
  const { status, headers, title, problems, advice } = explain(error);
  return { status, headers, body: { title, problems: [...problems], advice: [...advice] } };
}

function conflictOf({
  expected,
  latest,
}: {
  expected: number | undefined;
  latest: ConflictedStudy;
}): Refusal {
  const { id, name, revision, author, savedAt } = latest;
  const by = author === "" ? "someone" : author;
  return {
    status: 412,
    headers: {},
    body: {
      title: `“${name}” was changed meanwhile`,
      problems: [],
      advice: [
        `Revision ${revision} was saved by ${by} at ${savedAt}; nothing was overwritten. Read it, put your change to it, and save with its ETag.`,
      ],
      expected: expected ?? null,
      latest: revision,
      links: {
        expected: expected === undefined ? null : revisionAddress(id, expected),
        latest: studyAddress(id),
      },
    },
  };
}

type ConflictedStudy = Pick<ListedStudy, "id" | "name" | "revision" | "author" | "savedAt">;
