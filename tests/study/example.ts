import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { parse, stringify } from "yaml";
import type { StudyDocument } from "../../src/study/format/schema.js";
import { notYetEstimated } from "../../src/study/prepare/chance-estimate.js";
import { toModel } from "../../src/study/prepare/to-model.js";
import { trafficOf } from "../../src/study/prepare/traffic.js";
import { vesselChances } from "../../src/study/prepare/vessel-chances.js";
import { InputError, type Problem } from "../../src/study/reading/problems.js";
import { readStudyText } from "../../src/study/reading/read.js";

export const exampleNames = ["sorrel-bend", "ninemoss", "copperhithe", "thistledown"] as const;
export type ExampleName = (typeof exampleNames)[number];

export const examplePath = (name: ExampleName): string =>
  fileURLToPath(new URL(`../../src/examples/${name}.yaml`, import.meta.url));

export const exampleText = (name: ExampleName): string => readFileSync(examplePath(name), "utf8");

const trimmed = new Map<ExampleName, unknown>();

/**
 * An example as the parser of YAML gives it, a copy at each call. What only the larger example has is left out, so that
 * a test may put it in: other schedules with the option that follows one, service lines, a turbine by type, what was
 * counted of boats, how long they were out of infested water, years known to be clean, which class pays which fee, how
 * options watch for mussels, how prices and the discount rate came about, what is done if mussels are found, and in
 * either example the option in force.
 */
export function exampleDocument(name: ExampleName = "sorrel-bend"): unknown {
  const document = trimmed.get(name) ?? trimmedExample(name);
  trimmed.set(name, document);
  return structuredClone(document);
}

function trimmedExample(name: ExampleName): unknown {
  const document: unknown = parse(exampleText(name));
  for (const key of ["otherSchedules", "storageValue", "storageValueOrigin"])
    put(document, `lake.${key}`, absent);
  put(document, "boats.seasons", absent);
  put(document, "boats.cleanPeriods", absent);
  put(document, "study.existingOption", absent);
  for (const key of ["escalation", "inflation", "inflationOrigin"]) put(document, `money.${key}`, absent);
  if (name === "sorrel-bend") {
    threeRamps(document);
    put(document, "report.found", absent);
    put(document, "money.discountRate", "3 %/yr");
    put(document, "money.discountRateOrigin", "Invented rate");
  }
  const counted = name === "copperhithe" ? "infested-waters" : "infested-30-days";
  put(document, `boats.classes[${counted}].fouled`, "3 %");
  keep(document, "options", (option) => get(option, "schedule") === undefined);
  keepNoFeeClasses(document);
  for (const option of listAt(document, "options")) {
    put(option, "monitoring", absent);
    put(option, "response", absent);
  }
  keep(document, "structures", (structure) => get(structure, "kind") !== "service-line");
  if (name === "sorrel-bend") {
    put(document, "boats.classes[long-moored].sinceInfestedWater", absent);
    put(document, "structures[hydropower].turbine", absent);
    put(document, "structures[hydropower].efficiency", "88 %");
  }
  return document;
}

function keepNoFeeClasses(document: unknown): void {
  const options: readonly unknown[] = Object(valueAt(document, "options"));
  for (const option of options) {
    const fees: readonly unknown[] = Object(get(option, "fees") ?? []);
    for (const fee of fees) put(fee, "vesselClass", absent);
  }
}

function listAt(document: unknown, list: string): unknown[] {
  const items = valueAt(document, list);
  if (!Array.isArray(items)) throw new Error(`the example holds no list ${list}`);
  return items;
}

/** Stations at three ramps, with fewer paid hours than they need. */
function threeRamps(document: unknown): void {
  put(document, "boats.sites", [
    { id: "north", name: "North ramp", share: "53 %" },
    { id: "dam", name: "Dam ramp", share: "30 %" },
    { id: "cove", name: "Willow Cove", share: "17 %" },
  ]);
  const atTwo = { sites: ["north", "dam"], from: "07:00" };
  put(document, "options[weekends].open", [
    { ...atTwo, dayTypes: ["summer-weekend"], to: "20:00" },
    { ...atTwo, dayTypes: ["shoulder-weekend"], to: "18:00" },
  ]);
  put(document, "options[full-season].open", [
    { dayTypes: ["summer-weekend", "summer-weekday"], from: "07:00", to: "20:00" },
    { dayTypes: ["shoulder-weekend", "shoulder-weekday"], from: "07:00", to: "18:00" },
    { dayTypes: ["early-late"], from: "07:00", to: "16:00" },
  ]);
  put(document, "options[full-season].staff[0].hoursPerYear", 4300);
}

function keep(document: unknown, list: string, isKept: (item: unknown) => boolean): void {
  put(document, list, listAt(document, list).filter(isKept));
}

/** Put in place of a value to take its key away. */
export const absent = Symbol("absent");

interface Place {
  readonly keys: readonly PropertyKey[];
  /** The place as a message writes it, ids beside the indexes. */
  readonly text: string;
}

/**
 * Finds a place in a document. In brackets stands an index, or a word that picks the first item of that kind, with
 * that id or holding that key: "structures[intake].rack.width", "options[steps].steps.coverage".
 */
export function placeIn(document: unknown, path: string): Place {
  let value = document;
  let text = "";
  const keys: PropertyKey[] = [];
  for (const [, name, bracketed] of path.matchAll(/([^.[\]]+)|\[([^\]]*)\]/g)) {
    if (bracketed === undefined) {
      keys.push(name ?? "");
      text += text === "" ? name : `.${name}`;
      value = get(value, name ?? "");
    } else {
      const index = /^\d+$/.test(bracketed) ? Number(bracketed) : indexOf(value, bracketed);
      keys.push(index);
      value = get(value, index);
      const id = get(value, "id");
      text += typeof id === "string" ? `[${index} "${id}"]` : `[${index}]`;
    }
  }
  return { keys, text };
}

function indexOf(list: unknown, word: string): number {
  const items: readonly unknown[] = Array.isArray(list) ? list : [];
  const index = items.findIndex(
    (item) => get(item, "kind") === word || get(item, "id") === word || get(item, word) !== undefined,
  );
  if (index === -1) throw new Error(`the example holds no item "${word}"`);
  return index;
}

function get(value: unknown, key: PropertyKey): unknown {
  return typeof value === "object" && value !== null && Object.hasOwn(value, key)
    ? Reflect.get(value, key)
    : undefined;
}

/** The value at a place of a document. */
export function valueAt(document: unknown, path: string): unknown {
  return placeIn(document, path).keys.reduce(get, document);
}

/** Sets the value at a place, or takes it away if the value is `absent`. */
export function put(document: unknown, path: string, value: unknown): void {
  const { keys } = placeIn(document, path);
  const last = keys.at(-1) ?? "";
  const holder = keys.slice(0, -1).reduce(get, document);
  if (typeof holder !== "object" || holder === null) throw new Error(`the example holds no place ${path}`);
  if (value === absent) Reflect.deleteProperty(holder, last);
  else Reflect.defineProperty(holder, last, { value, writable: true, enumerable: true, configurable: true });
}

type Edits = ReadonlyArray<readonly [path: string, value: unknown]>;

/** An example with some of its values replaced. */
export function editedDocument(edits: Edits, name?: ExampleName): unknown {
  const document = exampleDocument(name);
  for (const [path, value] of edits) put(document, path, value);
  return document;
}

/** The same as text. */
export const editedText = (edits: Edits, name?: ExampleName): string =>
  stringify(editedDocument(edits, name), { aliasDuplicateObjects: false });

/** Boats that an entered chance weighs as much as in tests; invented. */
export const priorSample = 100;

/** A study as the model takes it. */
export const modelOf = (document: StudyDocument): ReturnType<typeof toModel> =>
  toModel(document, {
    chances: vesselChances(document.boats, () => priorSample),
    traffic: trafficOf(document.boats),
    estimate: notYetEstimated,
  });

/** The error that a read ends with; fails if it ends without, or with one that is not for authors. */
export function inputErrorOf(read: () => unknown): InputError {
  try {
    read();
  } catch (error) {
    if (error instanceof InputError) return error;
    throw error;
  }
  throw new Error("the study was read without problems");
}

/** What an author is told of a text. */
export const problemsIn = (text: string): Told[] =>
  toldIn(inputErrorOf(() => readStudyText(text, "study.yaml")));

/** Problems without the places that programs go by. */
export const toldIn = ({ problems }: InputError): Told[] =>
  problems.map(({ path, found, allowed, remedy }) => ({ path, found, allowed, remedy }));

type Told = Pick<Problem, "path" | "found" | "allowed" | "remedy">;

/** What no message to an author may hold: traces, places in the program, names and values of the language. */
const programText = /\n\s+at |node_modules|\.[jt]s:\d|undefined|\[object|NaN|Error:|call stack|YAML\.parse/;

/** The first words of a message that only its programmer understands, if there are any. */
export const wordsOfTheProgram = (message: string): string | undefined => programText.exec(message)?.[0];
