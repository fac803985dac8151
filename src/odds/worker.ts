import { deserialize } from "node:v8";
import { once } from "../model/computed-once.js";
import { lakeTerms } from "../model/search/lake-terms.js";
import { type DrawnStudy, drawnStudy } from "../study/odds/draws.js";
import { inputsTold } from "../study/odds/inputs-told.js";
import { oddsSummary } from "../study/odds/odds-summary.js";
import { netBenefitsAt } from "../study/odds/sensitivity-points.js";
import { rankCorrelations } from "../study/odds/sensitivity-ranks.js";
import { comparedOptions } from "../study/odds/stop-drawing.js";
import { tellingAmounts } from "../study/prepare/amounts.js";
import { type Reply, replyOf } from "../study/reading/replies.js";
import {
  levelsIn,
  type StudySearch,
  searchedIn,
  searchResult,
  studySearch,
} from "../study/search/study-search.js";
import { moved } from "../workers/moved.js";
import type { Answers, GivenStudy, Question, Request, SharedStudy, StudyToDraw } from "./messages.js";

interface KnownStudy {
  readonly id: string;
  readonly study: StudyToDraw;
  readonly drawn: DrawnStudy;
  readonly searched: () => StudySearch;
}

let known: KnownStudy | undefined;

/** Answers a question, with the last study it was asked about at hand. */
export async function work({ study, question }: Request): Promise<Reply<Answers[keyof Answers]>> {
  const reply = await replyOf(() => {
    const asked = known?.id === study.id ? known : prepared(study);
    known = asked;
    return tellingAmounts(asked.study.document, () => answerTo(question, asked));
  });
  return moved(reply, "answer" in reply ? buffersOf(reply.answer) : []);
}

function prepared({ id, bytes }: SharedStudy): KnownStudy {
  const { study, assumptions }: GivenStudy = deserialize(Uint8Array.from(bytes));
  const drawn = tellingAmounts(study.document, () => drawnStudy(study.document, assumptions, study.settings));
  return { id, study, drawn, searched: once(() => studySearch(study.document, assumptions)) };
}

function answerTo(question: Question, { study, drawn, searched }: KnownStudy): Answers[keyof Answers] {
  switch (question.kind) {
    case "lake":
      return drawn.futures(question.block, question.lake);
    case "summary":
      return oddsSummary({ ...study, drawn }, question.futures, question.end);
    case "inputs":
      return inputsTold(drawn, question.futures);
    case "plan":
      return drawn.plan;
    case "ranks":
      return rankCorrelations(drawn.plan, question.netBenefits);
    case "netBenefits":
      return netBenefitsAt(drawn, comparedOptions(study.document), question.point);
    case "levels":
      return levelsIn(searched(), question.part, question.parts);
    case "terms":
      return lakeTerms(drawn.drawn(question.block, question.lake), searchedIn(searched(), question.schedule));
    case "search":
      return searchResult(searched(), question);
  }
}

/** Of the lists of one draw of the lake that are large. */
const buffersOf = (answer: Answers[keyof Answers]): ArrayBufferLike[] =>
  "byYear" in answer ? answer.byYear.map(({ buffer }) => buffer) : [];
