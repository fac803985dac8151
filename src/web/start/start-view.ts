import type { BalanceState } from "../../app/answers/questions.js";
import { idOf, problemText } from "../../editor/form-node.js";
import { lowered } from "../../editor/labels.js";
import { linkedAssets } from "../../report/document/render-page.js";
import { capitalised } from "../../report/words/format.js";
import type { Problem } from "../../study/reading/problems.js";
import type { Writing } from "../../study/short/amount-text.js";
import type { FactNote } from "../../study/short/fact-notes.js";
import type { TypicalValues } from "../../study/short/filling.js";
import type { Question, QuestionGroup } from "../../study/short/question.js";
import { questionGroups } from "../../study/short/questions.js";
import { typicalHint } from "../../study/short/typical-hint.js";
import { countOf, inputName, isThere, itemsOf, presenceKey, type Typed } from "./typed-facts.js";

interface StartPage {
  readonly screen: 1 | 2;
  readonly typed: Typed;
  readonly problems: readonly Problem[];
  /** Of the study that would be made; absent while something is wrong or nothing was said. */
  readonly balance: BalanceState | undefined;
  readonly author: string;
  /** What may be a slip. */
  readonly notes: readonly FactNote[];
}

/** One of the two screens. */
export function startView(page: StartPage, values: TypicalValues): object {
  const { screen, typed, problems, balance, author, notes } = page;
  const writing: Writing = { system: typed.units === "si" ? "si" : "us", currency: currencyIn(typed) };
  const notesByName = new Map(notes.map(({ at, text }) => [at.join("/"), text]));
  const context: Context = { typed, writing, values, errors: errorsByName(problems, typed), notesByName };
  const groups = questionGroups
    .filter((group) => group.screen === screen)
    .flatMap((group) => groupViews(group, context));
  const shown = new Set(groups.flatMap(({ fields }) => fields.map(({ name }) => name)));
  const own = new Set(["screen", "act", "author", "intakes#count"]);
  const hidden = Object.entries(typed)
    .filter(([name, value]) => !shown.has(name) && !own.has(name) && value !== "")
    .map(([name, value]) => ({ name, value }));
  return {
    title: screen === 1 ? "First answer: lake and structures" : "First answer: boats and program",
    ...{ assets: linkedAssets, groups, hidden, author, screen, isLast: screen === 2 },
    count: countOf(repeatedGroup(), typed),
    summary: faultsOf(problems, typed),
    wrong: problems.length,
    notes: toldNotes(notes),
    bench: { balance: balance ? balanceOfFacts(balance) : problems.length > 0 ? listedBelow : noBalance([]) },
  };
}

/** What is wrong, by the inputs that hold it. */
export const faultsOf = (problems: readonly Problem[], typed: Typed) =>
  [...errorsByName(problems, typed)].map(([name, texts]) => ({
    id: idOf([name]),
    place: placeOfName(name),
    text: texts.join(" "),
  }));

/** Notes with the questions that they are of, for where these are not shown. */
export const toldNotes = (notes: readonly FactNote[]) =>
  notes.map(({ at, text }) => ({ place: placeOfName(at.join("/")), text }));

/** The balance of a study made of facts, or what of them contradicts something else of it. */
export const balanceOfFacts = (state: BalanceState): object =>
  state.line ? { line: state.line } : noBalance(state.problems);

/** What stands for the balance where the page lists what is wrong. */
const listedBelow = { missing: "It appears here once what is listed below is mended" };

/** What stands for the balance until something has a cost, or while something typed cannot be. */
export function noBalance(problems: readonly Problem[]): { readonly missing: string } {
  const [first] = problems;
  if (!first) return { missing: "It appears here once there is a structure" };
  const keys = (first.at ?? []).map(String);
  // What a study made of the facts contradicts has its place there, below the same key.
  const name = keys[0] === "lake" ? keys.slice(1).join("/") : keys.join("/");
  return { missing: `${placeOfName(name) || "One entry"}: ${problemText(first)}`.replace(/\.$/, "") };
}

const currencyIn = ({ currency = "" }: Typed): string =>
  /^[A-Z]{3}$/i.test(currency.trim()) ? currency.trim().toUpperCase() : "USD";

function repeatedGroup(): QuestionGroup {
  const group = questionGroups.find(({ repeats }) => repeats);
  if (!group) throw new Error("no group of questions repeats");
  return group;
}

/** Whichever screen asks what is wrong; the first where both do. */
export function screenOf(problems: readonly Problem[]): 1 | 2 {
  const isFirst = problems.some(({ at }) => {
    const [first] = at ?? [];
    return questionGroups.some(
      ({ screen, key, questions }) =>
        screen === 1 && (key === first || (key === "" && questions.some((each) => each.key === first))),
    );
  });
  return isFirst ? 1 : 2;
}

interface Context {
  readonly typed: Typed;
  readonly writing: Writing;
  readonly values: TypicalValues;
  readonly errors: ReadonlyMap<string, readonly string[]>;
  readonly notesByName: ReadonlyMap<string, string>;
}

/** Words of problems by the names of their inputs. Things left empty were left out: they are counted again. */
function errorsByName(problems: readonly Problem[], typed: Typed): Map<string, string[]> {
  const found = new Map<string, string[]>();
  const places = itemsOf(repeatedGroup(), typed).map(({ index }) => index);
  for (const problem of problems) {
    const at = (problem.at ?? []).map((key) => (typeof key === "number" ? (places[key] ?? key) : key));
    const name = at.map(String).join("/");
    found.set(name, [...(found.get(name) ?? []), problemText(problem)]);
  }
  return found;
}

/** The question's words for an input. */
function placeOfName(name: string): string {
  const parts = name.split("/");
  const key = parts.at(-1) ?? "";
  const holder = parts.length > 1 ? (parts[0] ?? "") : "";
  const group = questionGroups.find(
    (each) => each.key === holder && each.questions.some((question) => question.key === key),
  );
  const label = group?.questions.find((question) => question.key === key)?.label ?? name;
  if (!group || holder === "") return label;
  const number = group.repeats ? ` ${Number(parts[1]) + 1}` : "";
  return `${group.title}${number}, ${lowered(label)}`;
}

interface GroupView {
  readonly title: string;
  readonly id: string;
  readonly fields: readonly FieldView[];
  readonly isLastOfSeveral: boolean;
}

function groupViews(group: QuestionGroup, context: Context): GroupView[] {
  if (!group.repeats) {
    const presence = group.presence ? [presenceField(group, group.presence, context)] : [];
    const fields = group.questions.map((question) => fieldView(group, question, undefined, context));
    return [
      {
        title: group.title,
        id: idOf(["group", group.title]),
        fields: [...presence, ...fields],
        isLastOfSeveral: false,
      },
    ];
  }
  const count = countOf(group, context.typed);
  return Array.from({ length: count }, (_, index) => ({
    title: `${group.title} ${index + 1}`,
    id: idOf(["group", group.key, index]),
    fields: group.questions.map((question) => fieldView(group, question, index, context)),
    isLastOfSeveral: index === count - 1,
  }));
}

interface FieldView {
  readonly id: string;
  readonly name: string;
  readonly label: string;
  readonly help: string;
  readonly value: string;
  readonly choices?: ReadonlyArray<{ value: string; label: string; chosen: boolean }>;
  readonly errors: readonly string[];
  /** What may be a slip; empty where nothing is. */
  readonly note: string;
  readonly describedBy: string;
}

function presenceField(group: QuestionGroup, label: string, { typed }: Context): FieldView {
  const name = inputName(group, presenceKey, undefined);
  const value = typed[name] ?? "";
  return {
    ...{ id: idOf([name]), name, label, help: "", value, errors: [], note: "", describedBy: "" },
    choices: [
      { value: "", label: "No, unless filled in here", chosen: value === "" },
      { value: isThere, label: "Yes", chosen: value === isThere },
    ],
  };
}

function fieldView(
  group: QuestionGroup,
  question: Question,
  index: number | undefined,
  { typed, writing, values, errors, notesByName }: Context,
): FieldView {
  const name = inputName(group, question.key, index);
  const id = idOf([name]);
  const value = typed[name] ?? "";
  const own = errors.get(name) ?? [];
  const help = capitalised(
    [question.help, typicalHint(question, values, writing)].filter(Boolean).join("; "),
  );
  const note = notesByName.get(name) ?? "";
  const described = [help ? `${id}-help` : "", own.length > 0 ? `${id}-error` : "", note ? `${id}-note` : ""];
  const view = {
    ...{ id, name, value, help, note, errors: own, label: question.label },
    describedBy: described.filter(Boolean).join(" "),
  };
  if (!question.choices) return view;
  const offered = [...emptyChoices(group, question), ...question.choices];
  return {
    ...view,
    choices: offered.map(([each, label]) => ({ value: each, label, chosen: each === value })),
  };
}

/** Of a thing that may be there several times the first question also says whether it is there. */
function emptyChoices(group: QuestionGroup, question: Question): (readonly [string, string])[] {
  if (question.isSettled) return [];
  const isFirst = group.repeats && group.questions[0] === question;
  return isFirst
    ? [
        ["", "No intake"],
        [isThere, "I don’t know what for"],
      ]
    : [["", "I don’t know"]];
}
