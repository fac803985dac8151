import { z } from "zod";
import { entrySchema } from "../../assumptions/entry.js";
import { studySchema } from "../../study/format/schema.js";
import { allowedCharacters, isPrintable } from "../../study/reading/characters.js";
import { sentFields } from "./sent-fields.js";

/** Schemas that the OpenAPI document calls by name. */
export const namedSchemas = z.registry<{ id: string }>();

export const named = <Schema extends z.ZodType>(id: string, schema: Schema): Schema => {
  namedSchemas.add(schema, { id });
  return schema;
};

const moment = z.string().meta({ description: "ISO 8601, UTC; empty for an example" });
const revisionNumber = z.int().min(1).meta({ description: "Counts from 1 in each study" });

export const state = z.enum(["active", "archived", "deleted"]);

/** A study as its author writes it. */
export const studyDocument = named("StudyDocument", studySchema);

const revisionFields = {
  id: z.string(),
  name: z.string(),
  revision: revisionNumber,
  savedAt: moment,
  author: z.string().meta({ description: "As typed; empty where nobody gave a name" }),
  note: z.string().meta({ description: "What was changed" }),
  origin: z.enum(["upload", "form", "restore", "copy", "import", "api"]),
  fileName: z.string(),
  isDamaged: z.boolean().meta({
    description: "Whether what is kept does not match its digest: its file is not given out (409)",
  }),
};

export const revisionCard = named(
  "RevisionCard",
  z.object({ ...revisionFields, links: z.object({ self: z.string() }) }),
);

export const revisionReply = named("Revision", revisionCard.extend({ text: z.string() }));

export const studyCard = named(
  "StudyCard",
  z.object({
    ...revisionFields,
    isExample: z.boolean().meta({ description: "Examples are read only: copy one to change it" }),
    state,
    createdAt: moment,
    stateChangedAt: moment,
    links: z.object({
      self: z.string(),
      text: z.string(),
      revisions: z.string(),
      results: z.string(),
      overrides: z.string(),
      page: z.string(),
    }),
  }),
);

export const problem = named(
  "Problem",
  z.object({
    path: z.string().meta({ description: "Place in the study, or line and column" }),
    found: z.string(),
    allowed: z.string(),
    remedy: z.string(),
  }),
);

export const studyReply = named(
  "Study",
  studyCard.extend({
    text: z.string().meta({ description: "The study file to the byte" }),
    document: z.unknown().meta({ description: "The file as JSON; null where it is neither YAML nor JSON" }),
    problems: z.array(problem).meta({ description: "What keeps it from being computed; none if complete" }),
  }),
);

export const checkReply = named("Check", z.object({ complete: z.boolean(), problems: z.array(problem) }));

export const assumptionReply = named(
  "Assumption",
  entrySchema.extend({ citation: z.string().meta({ description: "The source in full" }) }),
);

const overrideFields = {
  value: z
    .union([z.string(), z.number()])
    .meta({ description: "With its unit, and a range if it has one: 6 to 9 to 14 $/m2" }),
  reason: z
    .string()
    .trim()
    .min(1, "a reason")
    .max(200, "at most 200 characters")
    .refine(isPrintable, allowedCharacters),
};

export const overrideReply = named(
  "Override",
  z.object({
    id: z.string().meta({ description: "Id of the assumption" }),
    ...overrideFields,
    usual: z
      .number()
      .nullable()
      .meta({ description: "What it takes the place of; null if there is no such assumption" }),
    unit: z.string().nullable(),
  }),
);

export const overrideRequest = named("OverrideRequest", sentFields(overrideFields));

const side = z.object({ id: z.string(), revision: revisionNumber, name: z.string() });

export const differences = named(
  "Differences",
  z
    .looseObject({ left: side, right: side })
    .meta({ description: "inputs and results that differ, and limits that keep them from being compared" }),
);

export const results = named(
  "Results",
  z.record(z.string(), z.unknown()).meta({
    description:
      "Every figure and cost line: amounts as text with two decimals, other quantities in SI units. `headline` is the answer on average over all that is uncertain; it and `odds` are null until the odds are drawn, which asking starts: ask again",
  }),
);

export const odds = named(
  "Odds",
  z.record(z.string(), z.unknown()).meta({
    description:
      "How sure the study is: costs, chances and net benefits over many futures of its uncertain inputs, and which inputs matter",
  }),
);

export const issueCard = named(
  "IssueCard",
  z.object({
    studyId: z.string(),
    number: z.int().min(1).meta({ description: "Counts from 1 in each study" }),
    issuedAt: moment,
    author: z.string(),
    note: z.string(),
    revision: revisionNumber,
    studyName: z.string(),
    engineVersion: z.string(),
    seed: z
      .int()
      .nullable()
      .meta({ description: "Of the draws behind its odds; null where none were drawn" }),
    digest: z.string().meta({ description: "SHA-256 of all that it was made from" }),
    links: z.object({
      pdf: z.string(),
      boardPart: z.string().optional().meta({ description: "Absent where it was no document of its own" }),
    }),
  }),
);

const refusalFields = {
  title: z.string(),
  problems: z.array(problem),
  advice: z.array(z.string()).meta({ description: "What happened, and the way out" }),
};

export const refusal = named("Refusal", z.object(refusalFields));

export const conflict = named(
  "Conflict",
  z.object({
    ...refusalFields,
    expected: revisionNumber
      .nullable()
      .meta({ description: "The revision that the change was made to, if known" }),
    latest: revisionNumber,
    links: z.object({ expected: z.string().nullable(), latest: z.string() }),
  }),
);
