import type { Problem } from "../study/reading/problems.js";
import { amountOf } from "./amounts/amount.js";
import { takenText } from "./amounts/taken-text.js";
import { unitsOffered } from "./amounts/units-offered.js";
import { choicesOf, referenceChoices, unitChoices, waysOf, yesOrNo } from "./choices.js";
import type { Field, NamedField } from "./fields.js";
import { type FormContext, type FormNode, idOf, neededText, problemText } from "./form-node.js";
import { childOf, nameOf, shownText, unitName, wayOf } from "./form-values.js";
import { child, fieldNodes, groupNode, listNode, type Maker, monthsNode, sharesNode } from "./form-wholes.js";
import { exampleValue } from "./help/example-value.js";
import { isAsCopied } from "./marks/copied-values.js";
import { boxesOf } from "./multiple-choice.js";
import { newBearerName } from "./new-bearers.js";
import type { Place } from "./study-text.js";
import { typicalIn } from "./typical/typical-edits.js";
import { typicalText } from "./typical/typical-text.js";

/** A form for the fields at a place in the document. */
export function formOf(fields: readonly NamedField[], at: Place, context: FormContext): FormNode[] {
  const value = at.reduce<unknown>((found, key) => childOf(found, key), context.document);
  const { atPlace, inside } = problemIndex(context.problems);
  const notOwn = new Set(typicalIn(context.document).map(({ path }) => nameOf(path)));
  const impliedAt = textsByPlace(context.implied ?? []);
  const maker = formMaker({ ...context, atPlace, inside, notOwn, impliedAt });
  return fieldNodes(fields, { at, value, make: maker });
}

/** Problems by the names of their place and all places above it. */
function problemIndex(problems: readonly Problem[]) {
  const atPlace = new Map<string, Problem[]>();
  const inside = new Map<string, Problem[]>();
  const put = (index: Map<string, Problem[]>, name: string, problem: Problem) =>
    index.set(name, [...(index.get(name) ?? []), problem]);
  for (const problem of problems) {
    const keys = (problem.at ?? []).map(String);
    put(atPlace, keys.join("/"), problem);
    for (let length = 1; length <= keys.length; length += 1) {
      put(inside, keys.slice(0, length).join("/"), problem);
    }
  }
  return { atPlace, inside };
}

function textsByPlace(implied: NonNullable<FormContext["implied"]>): Map<string, string> {
  const found = new Map<string, string>();
  for (const { at, text } of implied) {
    const name = at.map(String).join("/");
    found.set(name, [found.get(name) ?? "", text].join(" ").trim());
  }
  return found;
}

/** Said of a value that nobody entered. */
const notOwnText = "Typical, not yours.";

interface Making extends FormContext {
  readonly atPlace: ReadonlyMap<string, readonly Problem[]>;
  readonly inside: ReadonlyMap<string, readonly Problem[]>;
  /** Names of places whose values are typical. */
  readonly notOwn: ReadonlySet<string>;
  readonly impliedAt: ReadonlyMap<string, string>;
}

function formMaker(making: Making): Maker {
  const make: Maker = (named, at, value) => {
    const { field } = named;
    const base = baseNode(named, at, value, making);
    switch (field.kind) {
      case "group":
        return groupNode(field.fields, { base, at, value, make });
      case "list":
        return listNode(field, { base, at, value, make }, making);
      case "months":
        return monthsNode(field.each, { base, at, value, make }, making);
      case "kinds": {
        const way = field.ways.find((each) => each.value === childOf(value, field.by));
        const children = way ? way.field.fields.map((each) => child(each, { at, value, make })) : [];
        return { ...base, shape: { ways: true }, choices: waysOf(field.ways, way?.value), children };
      }
      case "either": {
        const way = wayOf(field, value);
        const inner = make(
          { ...named, field: way.field, help: "", where: "", typical: [], required: true },
          at,
          value,
        );
        const whole = {
          ...base,
          errors: [],
          shape: { ways: true as const },
          choices: waysOf(field.ways, way.value),
        };
        if (inner.shape.group) return { ...whole, errors: base.errors, children: inner.children };
        // The one input has the place's own id and what is said of its value.
        const said = { needed: "", implied: "", taken: "", example: "" };
        const describedBy = base.help ? `${base.id}-choice-help ${inner.describedBy}` : inner.describedBy;
        const children = [{ ...inner, label: way.label, describedBy }];
        return { ...whole, ...said, id: `${base.id}-choice`, children };
      }
      case "shares":
        return sharesNode(field, { base, at, value, make }, making);
      default:
        return { ...base, unitName: unitName(base.name), ...plainParts(field, named, value, making) };
    }
  };
  return make;
}

/** Ids of the typical values of a field, by what another field beside it says. */
function typicalFor({ typical, typicalBy }: NamedField, at: Place, document: unknown): readonly string[] {
  if (!typicalBy) return typical;
  const beside = [...at.slice(0, -1), typicalBy.field];
  const value = beside.reduce<unknown>((found, key) => childOf(found, key), document);
  return typicalBy.ids[String(value ?? "")] ?? [];
}

function baseNode(
  named: NamedField,
  at: Place,
  value: unknown,
  { atPlace, inside, entries, notOwn, impliedAt, copied, document, examples, writing }: Making,
): FormNode {
  const { label, help, where, required, usual, field } = named;
  const name = nameOf(at);
  const isWhole = ["group", "list", "kinds", "either", "months", "shares"].includes(field.kind);
  const own = (isWhole ? atPlace : inside).get(name) ?? [];
  const missing = own.find(({ found }) => found === "nothing");
  const errors = own.filter((problem) => problem !== missing && !problem.unusual).map(problemText);
  const unusual = own.filter((problem) => problem.unusual).map(problemText);
  const id = idOf(at);
  const typicalMark = notOwn.has(name) ? [notOwnText] : [];
  const isMarked = copied !== undefined && (!isWhole || field.kind === "months");
  const copiedMark = isMarked && isAsCopied(copied, document, at) ? [`This was ${copied.name}’s.`] : [];
  const needed = [
    ...(missing ? [neededText(missing.allowed)] : []),
    ...unusual,
    ...typicalMark,
    ...copiedMark,
  ].join(" ");
  const typical = typicalText(typicalFor(named, at, document), entries);
  const taken = takenText(field, at, value, { entries, system: writing.system });
  const implied = impliedAt.get(name) ?? "";
  const isTyped = !isWhole && !["choice", "yes-no", "reference", "several"].includes(field.kind);
  const shows = isTyped && copiedMark.length === 0 && at.at(-1) !== "id";
  const example = shows ? exampleValue(examples ?? [], document, at) : "";
  const describedBy = [
    help || where || typical || taken || implied || example ? `${id}-help` : "",
    `${id}-error`,
  ]
    .filter(Boolean)
    .join(" ");
  return {
    ...{
      shape: {},
      name,
      id,
      label,
      help,
      where,
      typical,
      taken,
      implied,
      example,
      required,
      moves: named.moves === true,
      usual,
      errors,
      needed,
      describedBy,
    },
    makes: field.kind === "reference" && field.to === "money.bearers" ? newBearerName(name) : "",
    confirm: unusual.length > 0 ? `confirm:${name}` : "",
    ...{ value: shownText(value), choices: [], unitName: "", units: [], children: [], add: "", acts: [] },
  };
}

function plainParts(field: Field, named: NamedField, value: unknown, making: Making): Partial<FormNode> {
  switch (field.kind) {
    case "quantity": {
      const { amount, unit } = amountOf(value, field.dimension, making.writing);
      const units = unitChoices(unitsOffered(field.dimension, making.writing), unit);
      return { shape: { amount: true }, value: amount, units };
    }
    case "choice":
      return { shape: { select: true }, choices: choicesOf(field, value, named) };
    case "several":
      return { shape: { boxes: true }, choices: boxesOf(field, value) };
    case "yes-no":
      return { shape: { select: true }, choices: choicesOf(yesOrNo, value, named) };
    case "reference":
      return { shape: { select: true }, choices: referenceChoices(field.to, value, named, making.document) };
    case "date":
      return { shape: { date: true } };
    case "text":
      return { shape: { [field.form === "id" ? "line" : field.form]: true } };
    default:
      return { shape: { line: true } };
  }
}
