import { z } from "zod";
import type { Studies } from "../../app/studies.js";
import type { StudyEntry } from "../../app/study-entry.js";
import { applyOverrides } from "../../assumptions/override.js";
import { withOverride, withoutOverride } from "../../editor/override-edits.js";
import { studySchema } from "../../study/format/schema.js";
import { InputError, problemsOf, valueAt } from "../../study/reading/problems.js";
import { matchedRevision } from "./entity-tag.js";
import { authorQuery, ownStudyIn, studyIn, studyPath } from "./found.js";
import { jsonBody, noBody, noParameters, type Operation, operation } from "./operation.js";
import { wholeStudy } from "./reading-operations.js";
import { overrideReply, overrideRequest, studyReply } from "./schemas.js";

const overridePath = studyPath.extend({
  assumption: z.string().meta({ description: "Id of the assumption" }),
});

/** A study's own values in place of assumptions; the study may be incomplete. */
export const overrideOperations = (studies: Studies): Operation[] => [
  listing(studies),
  setting(studies),
  resetting(studies),
];

function listing(studies: Studies): Operation {
  return operation({
    method: "get",
    path: "/api/studies/{id}/overrides",
    operationId: "listOverrides",
    summary: "A study's own values in place of assumptions",
    parameters: studyPath,
    query: noParameters,
    body: noBody,
    reply: z.array(overrideReply),
    isTagged: true,
    answer: ({ parameters }) => {
      const entry = studyIn(studies, parameters.id);
      return { reply: overridesIn(studies, entry), entry };
    },
  });
}

function setting(studies: Studies): Operation {
  return operation({
    method: "put",
    path: "/api/studies/{id}/overrides/{assumption}",
    operationId: "setOverride",
    summary: "Give an assumption a value of the study's own, with the reason",
    parameters: overridePath,
    query: authorQuery,
    body: jsonBody(overrideRequest),
    needsMatch: true,
    reply: studyReply,
    isTagged: true,
    answer: ({ parameters: { id, assumption }, query: { author }, body, match }) => {
      const { text, fileName } = ownStudyIn(studies, id);
      const expected = matchedRevision(match, ownStudyIn(studies, id));
      const override = { id: assumption, ...body };
      refuseUnusable(studies, override);
      const writer = { author, note: `Own value of ${assumption}: ${body.reason}`, origin: "api" } as const;
      const entry = studies.save(id, expected, withOverride(text, fileName, override), writer);
      return { reply: wholeStudy(studies, entry), entry };
    },
  });
}

function resetting(studies: Studies): Operation {
  return operation({
    method: "delete",
    path: "/api/studies/{id}/overrides/{assumption}",
    operationId: "resetOverride",
    summary: "Take an own value back, so that the assumption counts again",
    parameters: overridePath,
    query: authorQuery,
    body: noBody,
    needsMatch: true,
    reply: studyReply,
    isTagged: true,
    answer: ({ parameters: { id, assumption }, query: { author }, match }) => {
      const { text, fileName } = ownStudyIn(studies, id);
      const expected = matchedRevision(match, ownStudyIn(studies, id));
      const writer = { author, note: `Usual value of ${assumption} again`, origin: "api" } as const;
      const entry = studies.save(id, expected, withoutOverride(text, fileName, assumption), writer);
      return { reply: wholeStudy(studies, entry), entry };
    },
  });
}

function overridesIn(studies: Studies, entry: StudyEntry) {
  const written = valueAt(studies.check(entry).document, ["overrides"]);
  const parsed = studySchema.shape.overrides.safeParse(written);
  if (!parsed.success) {
    throw new InputError(`The overrides of ${entry.name}`, problemsOf(parsed.error.issues, written));
  }
  return parsed.data.map(({ id, value, reason }) => {
    const assumption = studies.assumptions.entries.get(id);
    return { id, value, reason, usual: assumption?.value ?? null, unit: assumption?.unit ?? null };
  });
}

/** @throws InputError where no assumption has that id, or it cannot have that value */
function refuseUnusable(studies: Studies, override: z.output<typeof overrideRequest> & { id: string }): void {
  const { problems } = applyOverrides(studies.assumptions, [override]);
  if (problems.length === 0) return;
  throw new InputError(
    "The override",
    problems.map(({ field, found, allowed }) => ({
      path: field,
      found: `"${found}"`,
      allowed,
      remedy: "Correct it.",
    })),
  );
}
