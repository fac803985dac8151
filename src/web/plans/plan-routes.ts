import express, { type Express, type Response } from "express";
import { type BalanceState, textOf } from "../../app/answers/questions.js";
import type { StudyEntry } from "../../app/study-entry.js";
import { mayOnlyRead } from "../../app/visitor.js";
import { draftOf } from "../../editor/draft.js";
import { prescribedPlan, withPrescribedPlan } from "../../editor/prescribed-plan.js";
import type { PartName, PlanPicks } from "../../report/rack/plan-picks.js";
import type { TableView } from "../../report/words/view-types.js";
import { InputError, sentence } from "../../study/reading/problems.js";
import { authorOf, rememberAuthor } from "../author.js";
import { NotFoundError } from "../explain.js";
import type { StudyPages } from "../pages/study-pages.js";
import { workbenchPage } from "../pages/workbench-page.js";
import { renderPage } from "../render.js";
import { type PlanForm, partAsked, readPlanForm } from "./plan-form.js";

type Parts = Pick<StudyPages, "studies" | "answers" | "find">;

/** What a page shows beside the plans. */
interface Shown {
  readonly author: string;
  /** What was picked; what the study has if left out. */
  readonly picked?: PlanForm;
  readonly effect?: TableView;
  /** Why nothing was kept. */
  readonly refused?: string;
}

const largestForm = "20kb";

/** Plans of upkeep with their prices; one of them is prescribed for a part, tried or taken back. */
export function addPlans(app: Express, parts: Parts): void {
  const { answers, find } = parts;
  const form = express.urlencoded({ extended: false, limit: largestForm });
  app.get("/studies/:id/plans", async (request, response) => {
    const entry = find(request.params.id);
    const asked = partAsked(request.query);
    const author = authorOf(request);
    const isTried = asked && request.query.plan !== undefined;
    if (!isTried) return show(response, parts, entry, asked, { author });
    const picked = readPlanForm({ ...request.query, base: entry.revision });
    const text = withPrescribedPlan(entry, asked, {
      plan: picked.plan,
      reason: picked.reason || "tried",
    });
    const names = ["As kept", "As tried"] as const;
    const effect = await answers.ask("effect", { before: entry.text, ...textOf({ ...entry, text }), names });
    return show(response, parts, entry, asked, { author, picked, effect });
  });
  app.post("/studies/:id/plans", form, async (request, response) => {
    const entry = find(String(request.params.id));
    if (entry.isExample) throw new NotFoundError();
    const picked = readPlanForm(request.body);
    const { author } = picked;
    rememberAuthor(response, author);
    const refused = await refusedBecause(parts, entry, picked);
    if (refused !== undefined) {
      response.status(refused.status);
      return show(response, parts, entry, picked, { author, picked, refused: refused.why });
    }
    const note = `${picked.part}: ${picked.plan === "" ? "the cheapest plan" : `prescribed ${picked.plan}`}`;
    const writer = { author, note, origin: "form" } as const;
    const { text } = entry;
    const changed = changedText(entry, picked);
    if (changed !== text) parts.studies.save(entry.id, entry.revision, changed, writer);
    response.redirect(303, addressOf(entry, picked));
  });
}

const addressOf = ({ id }: StudyEntry, { structure, part }: PartName): string =>
  `/studies/${id}/plans?${new URLSearchParams({ structure, part })}`;

const changedText = (entry: StudyEntry, { structure, part, plan, reason }: PlanForm): string =>
  withPrescribedPlan(entry, { structure, part }, plan === "" ? undefined : { plan, reason });

/** Why what was picked is not kept; what was typed stays in the form. */
async function refusedBecause(
  { studies, answers }: Parts,
  entry: StudyEntry,
  picked: PlanForm,
): Promise<{ readonly status: number; readonly why: string } | undefined> {
  const before = studies.revision(entry.id, picked.base) ?? entry;
  const [shown, latest] = [before, entry].map((each) =>
    prescribedPlan(draftOf(each.text, each.fileName).document, picked),
  );
  if (shown?.plan !== latest?.plan || shown?.reason !== latest?.reason) {
    const did = latest ? `prescribed ${latest.plan} (“${latest.reason}”)` : "took the prescription back";
    const why = `${entry.author || "Someone"} ${did} in revision ${entry.revision}, while you worked. Nothing was overwritten; what you picked is below. Save again to keep yours.`;
    return { status: 409, why };
  }
  if (picked.plan !== "" && picked.reason === "") {
    return {
      status: 400,
      why: "A reason is missing: the report prints it beside the plan. Type one and save again.",
    };
  }
  const balance = await answers.ask("balance", textOf({ ...entry, text: changedText(entry, picked) }));
  return balance.line ? undefined : { status: 400, why: balance.problems.map(sentence).join(" ") };
}

async function show(
  response: Response,
  { answers }: Parts,
  entry: StudyEntry,
  asked: PartName | undefined,
  shown: Shown,
): Promise<void> {
  const balance = await answers.ask("balance", textOf(entry));
  if (!balance.line) throw new InputError(balance.subject, balance.problems);
  const picks = await answers.ask("plans", { ...textOf(entry), part: asked });
  if (asked && !picks.open) throw new NotFoundError();
  response.set("Cache-Control", "no-store");
  response.send(renderPage("plans", pageOf(entry, balance, picks, shown)));
}

function pageOf(entry: StudyEntry, balance: BalanceState, picks: PlanPicks, shown: Shown): object {
  const { open, parts, priceYear } = picks;
  const { picked, effect, refused, author } = shown;
  const frame = { entry, balance, part: "plans", title: open?.name ?? "Plans of upkeep" };
  return workbenchPage(frame, {
    ...{ priceYear, author, effect, refused },
    study: entry.id,
    list: `/studies/${entry.id}/plans`,
    base: entry.revision,
    readOnly: entry.isExample || mayOnlyRead(),
    isAnyPrescribed: parts.some(({ prescribed }) => prescribed !== undefined),
    parts: parts.map((part) => ({ ...part, href: addressOf(entry, part) })),
    open: open && {
      ...open,
      plans: open.plans.map((plan) => ({
        ...plan,
        isPicked: picked ? picked.plan === plan.id : plan.isTaken,
      })),
      leavesChoice: picked?.plan === "",
      reason: picked?.reason ?? open.prescribed ?? "",
    },
    drawsCharts: open?.intervals !== undefined,
  });
}
