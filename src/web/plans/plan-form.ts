import { z } from "zod";
import type { PartName } from "../../report/rack/plan-picks.js";
import { allowedCharacters, isPrintable } from "../../study/reading/characters.js";
import { authorName } from "../author.js";
import { formIn } from "../sent-form.js";

/** A plan picked for a part; an empty one leaves the choice to the program. */
export interface PlanForm extends PartName {
  readonly plan: string;
  readonly reason: string;
  readonly author: string;
  /** The revision that the form showed. */
  readonly base: number;
}

const text = (most: number) => z.string().trim().max(most, `at most ${most} characters`);

const form = z.object({
  structure: text(200),
  part: text(200),
  plan: text(60).default(""),
  reason: text(200).refine(isPrintable, allowedCharacters).default(""),
  author: authorName.default(""),
  base: z.coerce.number().int().min(1),
});

/** @throws InputError for what is no such form */
export const readPlanForm = (body: unknown): PlanForm => formIn(form, body);

/** The part that an address opens. */
export function partAsked(query: unknown): PartName | undefined {
  return form.pick({ structure: true, part: true }).safeParse(query).data;
}
