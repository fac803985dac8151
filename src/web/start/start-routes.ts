import type { Express, Request } from "express";
import type { BalanceState } from "../../app/answers/questions.js";
import { firstStudy } from "../../editor/first-study.js";
import { InputError, problemsOf } from "../../study/reading/problems.js";
import { factNotes } from "../../study/short/fact-notes.js";
import type { ShortFacts } from "../../study/short/facts-schema.js";
import { questionGroups } from "../../study/short/questions.js";
import { type ReadFacts, readFacts } from "../../study/short/read-facts.js";
import { authorName, authorOf, rememberAuthor } from "../author.js";
import { largeForm } from "../editing/edit-routes.js";
import type { StudyPages } from "../pages/study-pages.js";
import { readerSignal } from "../reader-gone.js";
import { renderPage } from "../render.js";
import { type LiveParts, liveBalance } from "./live-balance.js";
import { balanceOfFacts, faultsOf, noBalance, screenOf, startView, toldNotes } from "./start-view.js";
import { countOf, rawFacts, saysStructures, type Typed, typedIn } from "./typed-facts.js";

type Parts = LiveParts & Pick<StudyPages, "studies">;

/**
 * A first answer from few facts on two screens. What was typed stands in the address until the study is made, so that
 * nothing is kept on the server, a page that was left can be come back to, and two people do not meet.
 */
export function addStart(app: Express, parts: Parts, today: () => string): void {
  const { studies, answers } = parts;
  const entries = () => studies.assumptions.entries;
  const textOf = (facts: ShortFacts) => ({
    text: firstStudy(facts, entries(), today()),
    fileName: "first estimate",
  });
  const balanceOf = async (read: ReadFacts, typed: Typed): Promise<BalanceState | undefined> => {
    if (!read.facts || !saysStructures(typed)) return undefined;
    return answers.ask("balance", textOf(read.facts));
  };
  const page = async (request: Request, typed: Typed, read: ReadFacts, wanted: 1 | 2) => {
    const screen = read.problems.length > 0 ? screenOf(read.problems) : wanted;
    const balance = await balanceOf(read, typed);
    const notes = read.facts ? factNotes(read.facts, entries()) : [];
    const view = { screen, typed, problems: read.problems, balance, author: authorOf(request), notes };
    return renderPage("start", startView(view, entries()));
  };
  app.get("/start", async (request, response) => {
    const typed = withAnother(typedIn(request.query));
    const read = readFacts(rawFacts(typed), entries());
    response.set("Cache-Control", "no-store");
    response.send(await page(request, typed, read, screenWanted(typed)));
  });
  app.get("/start/balance", async (request, response) => {
    const typed = typedIn(request.query);
    const { facts, problems } = readFacts(rawFacts(typed), entries());
    const faults = faultsOf(problems, typed);
    response.set("Cache-Control", "no-store");
    if (!facts || !saysStructures(typed)) {
      const balance = renderPage("partials/balance-line", noBalance(problems));
      response.json({ balance, range: "", isUnderWay: false, faults });
      return;
    }
    const notes = toldNotes(factNotes(facts, entries()));
    const head = (state: BalanceState) => ({ ...balanceOfFacts(state), notes });
    const how = { head, wantsRange: typed.range === "1", signal: readerSignal(response) };
    response.json({ ...(await liveBalance(parts, textOf(facts), how)), faults });
  });
  app.post("/start", largeForm, async (request, response) => {
    const typed = typedIn(request.body);
    const author = authorName.safeParse(typed.author ?? "");
    if (!author.success) throw new InputError("The form", problemsOf(author.error.issues, typed.author));
    const read = readFacts(rawFacts(typed), entries());
    rememberAuthor(response, author.data);
    if (!read.facts) {
      response.status(400).send(await page(request, typed, read, 2));
      return;
    }
    const { text } = textOf(read.facts);
    const writer = {
      author: author.data,
      note: "A first estimate from short facts",
      origin: "form",
    } as const;
    const kept = studies.create(text, writer);
    response.redirect(303, `/studies/${kept.id}`);
  });
}

/** The screen that a button asks for, or the one that the address names. */
function screenWanted({ act = "", screen = "" }: Typed): 1 | 2 {
  if (act === "next" || act === "update") return 2;
  return act === "" && screen === "2" ? 2 : 1;
}

/** With room for one more of a thing, if that was asked for. */
function withAnother(typed: Typed): Typed {
  const group = questionGroups.find(({ key, repeats }) => repeats && typed.act === `more:${key}`);
  return group ? { ...typed, [`${group.key}#count`]: String(countOf(group, typed) + 1) } : typed;
}
