import { z } from "zod";
import { quantity, shortText } from "./fields.js";
import { foundSchema } from "./found-schema.js";
import { requestFields } from "./request-schema.js";

/** Sections of a report's part for the board, in order; page 1 is always printed. */
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

/** Appendices by letter; letters do not change if some are left out. */
export const appendices = [
  "cost-lines",
  "years",
  "assumptions",
  "hydraulics",
  "checks",
  "plans",
  "money",
  "odds-tables",
  "schedules",
  "program-detail",
  "detection",
  "register",
  "chance",
  "comparison",
  "request",
  "found",
] as const;

type Appendix = (typeof appendices)[number];

/** Sections now in the method document; a study may still omit them, to no effect. */
export const movedSections = ["relations", "worked", "drying"] as const;

/** Section headings in forms, as printed for a program with steps. */
export const boardTitles: Readonly<Record<(typeof boardSections)[number], string>> = {
  lake: "The lake and what is at risk",
  infestation: "At the rack: what an infestation would cost",
  program: "At the ramp: the program options",
  balance: "The balance",
  odds: "How sure are we",
  bearers: "Who pays",
  budget: "The budget, year by year",
  "left-out": "What the estimate leaves out",
  method: "How it is computed",
};

const appendixNames: Readonly<Record<Appendix, string>> = {
  "cost-lines": "Cost lines",
  years: "Years",
  assumptions: "Assumptions",
  hydraulics: "Hydraulics, to be checked by hand",
  checks: "Checks and sources",
  plans: "Keeping each part in service",
  money: "How money is counted",
  "odds-tables": "The odds, with the tables behind them",
  schedules: "Other levels of the lake",
  "program-detail": "The program options in detail",
  detection: "When would we know?",
  register: "Register of structures and habitat",
  chance: "Where the chance comes from",
  comparison: "The options compared in detail",
  request: "The request for the budget office",
  found: "If mussels are found",
};

const movedTitles: Readonly<Record<(typeof movedSections)[number], string>> = {
  relations: "Relations (in the method document now)",
  worked: "Worked by hand (in the method document now)",
  drying: "Drying and frost against published results (in the method document now)",
};

const firstLetter = "A".charCodeAt(0);

/** The letter of an appendix in the report's texts. */
export const appendixLetter = (id: Appendix): string =>
  String.fromCharCode(firstLetter + appendices.indexOf(id));

/** Headings of the appendices, as printed. */
export const appendixTitles: Readonly<Record<string, string>> = Object.fromEntries(
  appendices.map((id) => [id, `Appendix ${appendixLetter(id)}. ${appendixNames[id]}`]),
);

const ownText = z.strictObject({
  section: z.enum(["board", ...boardSections]).meta({
    description: "The section that it is printed in",
    titles: { board: "Page 1: what the board is asked", ...boardTitles },
  }),
  text: z.string().trim().min(1, "a text that is not empty").max(4000, "at most 4,000 characters").meta({
    description: "Plain text or simple Markdown: paragraphs, lists, *emphasis*, **strong**, tables",
  }),
});

const mostLetters = 2000;
const passage = (remedy: string) =>
  z
    .string()
    .trim()
    .min(1, `a text that is not empty; ${remedy}`)
    .max(mostLetters, `at most ${mostLetters.toLocaleString("en-US")} characters`)
    .optional();

/** What the board is asked, beside what follows from the requested option and its budget. */
const askSchema = z
  .strictObject({
    lastYearBudget: quantity("money").optional().meta({
      description: "What was budgeted for the program in the fiscal year before the first one of the request",
      where: "the adopted budget",
    }),
    lastYearActual: quantity("money").optional().meta({
      description: "What was spent in that year, net of fees and other revenue as the budget is",
      where: "the finance office",
    }),
    motion: passage("leave it out for the usual wording").meta({
      description: "Wording of the motion; the usual one, with the amounts of the request, if left out",
    }),
    ifNotFunded: passage("leave it out for the usual sentence").meta({
      description: "What happens if the request is not funded; the usual sentence if left out",
    }),
    checkedBy: shortText
      .optional()
      .meta({ description: "Who checked the study; printed beside who prepared it" }),
    ...requestFields,
  })
  .prefault({})
  .meta({ description: "The request that the board votes on" });

export const reportSchema = z
  .strictObject({
    ask: askSchema,
    paper: z
      .enum(["letter", "a4"])
      .optional()
      .meta({
        description: "Letter with US units and A4 with metric ones if left out",
        titles: { letter: "Letter (8½ × 11 in)", a4: "A4 (210 × 297 mm)" },
      }),
    found: foundSchema,
    leaveOut: z
      .array(
        z
          .enum([...boardSections, ...appendices, ...movedSections])
          .meta({ titles: { ...boardTitles, ...appendixTitles }, moved: movedTitles }),
      )
      .default([])
      .meta({ description: "Sections and appendices that are not printed" }),
    texts: z
      .array(ownText)
      .max(30, "at most 30 texts")
      .default([])
      .meta({ description: "The author's own words in a section" }),
  })
  .prefault({})
  .meta({ description: "What the printed report has in it; left out, all of it" });
