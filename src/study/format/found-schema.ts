import { z } from "zod";
import type { Spread } from "../../units/spread.js";
import { dayOfYear, identifier, positive, quantity, reference, shortText } from "./fields.js";

const mostPhases = 30;
const mostContacts = 12;
const longestDays = 36_500;

/** What is done from the first suspicion to the day on which the lake is taken off the list. */
export const foundPhases = [
  "suspicion",
  "confirmation",
  "delimiting",
  "structures",
  "restriction",
  "treatment",
  "leaving-boats",
  "levels",
  "watch",
  "delisting",
] as const;

const phaseCost = quantity("money").refine(
  ({ value, spread }) => Math.min(value, ...lowestOf(spread)) >= 0,
  "an amount of at least 0, or a range of such amounts",
);

function lowestOf(spread: Spread | undefined): number[] {
  if (!spread) return [];
  return spread.kind === "discrete" ? spread.choices.map(({ value }) => value) : [spread.low];
}

const samples = ["typical.larvae-sample", "typical.dna-sample"];
const crews = ["typical.survey-crew-day", "typical.dive-crew-day"];
/** Typical values of a phase's cost. */
const typicalCosts = {
  suspicion: [...samples, "typical.survey-crew-day"],
  confirmation: samples,
  delimiting: [...crews, ...samples],
  structures: ["typical.dive-crew-day"],
  watch: ["typical.watch-year", ...samples],
} as const;

const days = (what: string) =>
  z.int("a whole number of days").min(0, "at least 0 days").max(longestDays, "at most 36,500 days").meta({
    description: what,
  });

const phase = z.strictObject({
  phase: z.enum(foundPhases),
  what: shortText.meta({
    description: "What is done: repeat samples, a survey by divers, a copper treatment",
  }),
  starts: days("Days after the first suspicion"),
  lasts: days("Days that it lasts; of a watch, until the lake is taken off the list"),
  cost: phaseCost.optional().meta({
    description:
      "Each time; of leaving boats, levels and watch, a year; a range is simulated. Left out where it is an item or the option's response, and for a treatment with its volume, which is then priced as published",
    typical: [...samples, ...crews, "typical.watch-year"],
    typicalBy: { field: "phase", ids: typicalCosts },
  }),
  volume: positive("volume").optional().meta({ description: "Of a treatment: the water that is treated" }),
  item: shortText.optional().meta({
    description:
      "In place of a cost: the name of a lake-wide duty or policy that is this phase, so that it counts once",
  }),
  decides: shortText.optional().meta({ description: "Who decides" }),
  payer: reference("money.bearers")
    .optional()
    .meta({ description: "Whoever pays for the program if left out" }),
  publicShare: quantity("share").optional().meta({ description: "Share that another public body pays" }),
  permits: shortText.optional().meta({ description: "Permits, monitoring and what it does to fish" }),
  origin: shortText.meta({ description: "Where dates and costs come from" }),
});

const contact = z.strictObject({
  id: identifier,
  name: shortText,
  role: shortText.meta({ description: "What they do or decide" }),
  phone: shortText.optional().meta({ description: "As it is dialled" }),
  askBefore: shortText
    .optional()
    .meta({ description: "What nobody does before asking them: shut, dose, announce" }),
});

/** The day on which mussels are found: phases, names and numbers. */
export const foundSchema = z
  .strictObject({
    suspectedOn: dayOfYear.meta({ description: "Day of the year on which the first find is taken to be" }),
    cleanYears: z
      .int("a whole number of years")
      .min(1, "at least 1 year")
      .max(30, "at most 30 years")
      .optional()
      .meta({
        description: "Years without a find before the lake is taken off the list, by the agency's rule",
        typical: ["typical.clean-years"],
      }),
    phases: z.array(phase).max(mostPhases, `at most ${mostPhases} phases`).default([]),
    contacts: z
      .array(contact)
      .max(mostContacts, `at most ${mostContacts} contacts`)
      .default([])
      .meta({ description: "Who is told and asked, for the sheet for the wall" }),
  })
  .optional()
  .meta({
    description:
      "If mussels are found: what is done, when, by whom and at what cost. Told beside the comparison, unless an item or the option's response has it",
  });

export type FoundDocument = NonNullable<z.output<typeof foundSchema>>;
export type PhaseDocument = FoundDocument["phases"][number];
