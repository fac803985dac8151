import { type Document, visit } from "yaml";
import type { DimensionName } from "../../units/dimensions.js";
import { characterProblems } from "../reading/character-problems.js";
import { InputError, keysOfStudy, type Problem, problemOf, problemsOf } from "../reading/problems.js";
import { contentOf, placedDocument } from "../reading/read.js";
import { isMoney, typedUnit, type Writing } from "./amount-text.js";
import { factProblems } from "./fact-problems.js";
import { factsSchema, type ShortFacts } from "./facts-schema.js";
import type { TypicalValues } from "./filling.js";

/** Facts as they were read, or what is wrong with them. */
export type ReadFacts =
  | { readonly facts: ShortFacts; readonly problems: readonly [] }
  | { readonly facts?: undefined; readonly problems: readonly Problem[] };

/** The facts of a short file. @throws InputError with every problem found */
export function shortFactsOf(text: string, name: string, values: TypicalValues): ShortFacts {
  const document = placedDocument(text, name);
  keepPointedThousands(document);
  const { facts, problems } = readFacts(contentOf(document, name), values);
  if (facts) return facts;
  throw new InputError(name, problems);
}

/** Reads facts as they were typed: what is empty is not known, and a plain number takes the field's usual unit. */
export function readFacts(typed: unknown, values: TypicalValues): ReadFacts {
  if (typeof typed !== "object" || typed === null || Array.isArray(typed)) {
    return { problems: [noGroup(typed)] };
  }
  const raw = known(typed);
  const unseen = characterProblems(raw);
  if (unseen.length > 0) return { problems: unseen };
  const twofold = [...twofoldShare(raw), ...twofoldThousands(raw, [])];
  if (twofold.length > 0) return { problems: twofold };
  const parsed = factsSchema.safeParse(withUnits(raw, writingOf(raw)));
  if (!parsed.success) return { problems: problemsOf(parsed.error.issues, raw).map(withHint) };
  const contradictions = factProblems(parsed.data, values);
  if (contradictions.length === 0) return { facts: parsed.data, problems: [] };
  return { problems: contradictions.map((each) => problemOf(each, raw)) };
}

const noGroup = (found: unknown): Problem => ({
  path: "the file",
  found: Array.isArray(found) ? `a list of ${found.length}` : "a text without fields",
  allowed: 'facts by their names, a line each, such as "launches: 8,000"',
  remedy: "Begin with the example: ramp-and-rack start --example --out lake.short.yaml.",
});

/** A share without its sign, below 1: it may be a part of one or of a hundred. */
function twofoldShare(raw: unknown): Problem[] {
  const found: unknown = Reflect.get(Object(raw), "fromAway");
  if (!/^0?\.\d{1,10}$/.test(String(found))) return [];
  const at = ["fromAway"];
  const allowed = "a percentage with its sign, such as 54 %";
  const remedy = `Write ${Number((Number(found) * 100).toPrecision(3))} %, or ${String(found)} % if that is meant.`;
  return [{ path: "fromAway", at, found: String(found), allowed, remedy }];
}

/** "26.600": three decimals that end in nothing may be thousands, as many languages write them. */
const pointedThousands = /^[^\d.]*(\d{1,3})((?:\.\d{3})*\.\d\d0)(?![\d.])/;

/** A file's numbers that may be meant otherwise stay as they were typed. */
function keepPointedThousands(document: Document.Parsed): void {
  visit(document, {
    Scalar: (_key, node) => {
      if (typeof node.value === "number" && pointedThousands.test(node.source ?? ""))
        node.value = node.source;
    },
  });
}

function twofoldThousands(value: unknown, at: readonly PropertyKey[]): Problem[] {
  if (typeof value === "object" && value !== null) {
    return Object.entries(value).flatMap(([key, each]: [string, unknown]) =>
      twofoldThousands(each, [...at, Array.isArray(value) ? Number(key) : key]),
    );
  }
  const [, first, rest] = typeof value === "string" ? (pointedThousands.exec(value.trim()) ?? []) : [];
  if (first === undefined || rest === undefined || Number(first) === 0) return [];
  const thousands = `${first}${rest.replaceAll(".", ",")}`;
  const fraction = rest.indexOf(".", 1) < 0 ? `, or ${Number(`${first}${rest}`)} if a fraction is meant` : "";
  const path = at.map(String).join(".");
  const allowed = "thousands with a comma or nothing between them";
  return [
    {
      path,
      at: [...at],
      found: `"${String(value).slice(0, 60)}"`,
      allowed,
      remedy: `Write ${thousands}${fraction}.`,
    },
  ];
}

/** A decimal comma, with one or two digits or more than three behind it. */
const decimalComma = /\d,(?:\d{1,2}|\d{4,})(?!\d)/;

const namesOfFacts = `one of ${Object.keys(factsSchema.shape).join(", ")}, with what the example has under them`;

function withHint(problem: Problem): Problem {
  if (problem.allowed === keysOfStudy) return { ...problem, allowed: namesOfFacts };
  if (!decimalComma.test(problem.found)) return problem;
  return { ...problem, remedy: "Write decimals with a point: 3.5, not 3,5." };
}

/** A tree without what was left empty. */
function known(tree: unknown): unknown {
  if (typeof tree === "string") return tree.trim() === "" ? undefined : tree.trim();
  if (Array.isArray(tree)) return tree.map((each) => known(each) ?? {});
  if (typeof tree !== "object" || tree === null) return tree ?? undefined;
  const entries = Object.entries(tree).map(([key, value]: [string, unknown]) => [key, known(value)] as const);
  return Object.fromEntries(entries.filter(([, value]) => value !== undefined));
}

function writingOf(raw: unknown): Writing {
  const at = (key: string): unknown => Reflect.get(Object(raw), key);
  const currency = at("currency");
  return {
    system: at("units") === "si" ? "si" : "us",
    currency: typeof currency === "string" ? currency : "USD",
  };
}

/** Fields whose plain numbers have one meaning. */
const dimensionsOfFields = new Map<string, DimensionName>([
  ["summerLevel", "elevation"],
  ["winterLevel", "elevation"],
  ["area", "landArea"],
  ["depth", "length"],
  ["calcium", "concentration"],
  ["warmestMonth", "temperature"],
  ["fromAway", "share"],
  ["flow", "flow"],
  ["pipe", "smallLength"],
  ["length", "length"],
  ["head", "length"],
  ["hours", "hours"],
  ["cost", "moneyPerYear"],
]);

/** Facts that are numbers without a unit. */
const plainNumbers = new Set([
  "ramps",
  "slips",
  "units",
  "stations",
  "horizon",
  "exchangeRate",
  "infestedSince",
]);
const plainNumber = /^[-+]?(?:\d{1,3}(?:,\d{3})+|\d{1,15})(?:\.\d{1,15})?$/;

const numberOr = (value: unknown): unknown =>
  typeof value === "string" && plainNumber.test(value) ? Number(value.replaceAll(",", "")) : value;

function withUnits(tree: unknown, writing: Writing, within = ""): unknown {
  if (Array.isArray(tree)) return tree.map((each) => withUnits(each, writing, within));
  if (typeof tree !== "object" || tree === null) return tree;
  return Object.fromEntries(
    Object.entries(tree).map(([key, value]: [string, unknown]) => {
      if (plainNumbers.has(key)) return [key, numberOr(value)];
      const dimension = within === "docks" && key === "area" ? "area" : dimensionsOfFields.get(key);
      return [key, dimension ? inUnit(value, dimension, writing) : withUnits(value, writing, key)];
    }),
  );
}

const longestAmount = 60;
const numbers = /^[-+]?[\d.,]+(?:\s+to\s+[-+]?[\d.,]+){0,2}$/i;
const plainMoney = /^([$€£]|[A-Z]{3}\s)\s*[\d.,]+$/;

/** An amount with the field's unit if it has none. A share below 1 stays: it may be meant as a part or as percent. */
function inUnit(value: unknown, dimension: DimensionName, { system, currency }: Writing): unknown {
  if (typeof value !== "string" && typeof value !== "number") return value;
  const text = String(value);
  if (text.length > longestAmount) return value;
  const unit = typedUnit(dimension, system);
  if (isMoney(dimension)) {
    if (plainMoney.test(text)) return `${text}/${unit}`;
    const isRange = /\sto\s/i.test(text);
    if (!numbers.test(text)) return value;
    return isRange ? `${text} ${currency}/${unit}` : `${currency} ${text}/${unit}`;
  }
  return numbers.test(text) ? `${text} ${unit}` : value;
}
