import { z } from "zod";

/** Sections of the board's part of a report, in their order; page 1 is always printed. */
export const boardSections = [
  "lake",
  "infestation",
  "program",
  "balance",
  "odds",
  "bearers",
  "budget",
  "left-out",
  "method",
] as const;

/** Appendices in the order of their letters, which stay as they are if some are left out. */
export const appendices = [
  "cost-lines",
  "years",
  "assumptions",
  "hydraulics",
  "relations",
  "worked",
  "drying",
  "checks",
  "plans",
  "money",
  "odds-tables",
  "schedules",
  "program-detail",
  "detection",
  "register",
] as const;

const ownText = z.strictObject({
  section: z.enum(["board", ...boardSections]).meta({ description: "The section that it is printed in" }),
  text: z.string().trim().min(1, "a text that is not empty").max(4000, "at most 4,000 characters").meta({
    description: "Plain text or simple Markdown: paragraphs, lists, *emphasis*, **strong**, tables",
  }),
});

export const reportSchema = z
  .strictObject({
    leaveOut: z
      .array(z.enum([...boardSections, ...appendices]))
      .default([])
      .meta({
        description: `Sections and appendices that are not printed, of ${[...boardSections, ...appendices].join(", ")}`,
      }),
    texts: z
      .array(ownText)
      .max(30, "at most 30 texts")
      .default([])
      .meta({ description: "The author's own words in a section" }),
  })
  .prefault({})
  .meta({ description: "What the printed report has in it; left out, all of it" });
