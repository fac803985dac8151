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

/** Headings that a form offers sections by: as printed, of a program with steps. */
const boardTitles: Readonly<Record<(typeof boardSections)[number], string>> = {
  lake: "The lake and what is at risk",
  infestation: "At the rack: what an infestation would cost",
  program: "At the ramp: the program options",
  balance: "The balance",
  odds: "How sure are we",
  bearers: "Who bears it",
  budget: "The budget, year by year",
  "left-out": "What the estimate leaves out",
  method: "How it is computed",
};

const appendixTitles: Readonly<Record<(typeof appendices)[number], string>> = {
  "cost-lines": "Appendix A. Cost lines",
  years: "Appendix B. Years",
  assumptions: "Appendix C. Assumptions",
  hydraulics: "Appendix D. Hydraulics, to be checked by hand",
  relations: "Appendix E. Relations",
  worked: "Appendix F. Worked by hand",
  drying: "Appendix G. Drying and frost against published results",
  checks: "Appendix H. Checks and sources",
  plans: "Appendix I. Keeping each part in service",
  money: "Appendix J. How money is counted",
  "odds-tables": "Appendix K. The odds: how they were drawn, and the tables behind them",
  schedules: "Appendix L. Other levels of the lake",
  "program-detail": "Appendix M. The program options in detail",
  detection: "Appendix N. When would we know?",
  register: "Appendix O. Register of structures and habitat",
};

const ownText = z.strictObject({
  section: z.enum(["board", ...boardSections]).meta({
    description: "The section that it is printed in",
    titles: { board: "Page 1: what the board is asked", ...boardTitles },
  }),
  text: z.string().trim().min(1, "a text that is not empty").max(4000, "at most 4,000 characters").meta({
    description: "Plain text or simple Markdown: paragraphs, lists, *emphasis*, **strong**, tables",
  }),
});

export const reportSchema = z
  .strictObject({
    leaveOut: z
      .array(
        z.enum([...boardSections, ...appendices]).meta({ titles: { ...boardTitles, ...appendixTitles } }),
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
