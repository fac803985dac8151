import type { Field, NamedField } from "../fields.js";
import { studyFields } from "../fields.js";
import { lowered } from "../labels.js";
import { fieldsOfPart, partOf } from "../parts.js";

/** A figure that somebody else may know. */
export interface Asked {
  readonly what: string;
  readonly help: string;
  readonly where: string;
}

interface AskedOfThing {
  readonly thing: string;
  readonly items: readonly Asked[];
}

/** What is asked of one office, to be sent to it. */
export interface Checklist {
  readonly id: string;
  readonly title: string;
  readonly things: readonly AskedOfThing[];
}

interface Recipient {
  readonly id: string;
  readonly title: string;
  /** Pages of the study, with the fields that this office knows; all where none are named. */
  readonly pages: ReadonlyArray<{
    readonly part: string;
    readonly title: string;
    readonly keys?: readonly string[];
  }>;
}

const waterKeys = ["chemistry", "surfaceTemperature", "deepTemperature", "thermoclineDepth"];

const recipients: readonly Recipient[] = [
  {
    ...{ id: "dam", title: "For the dam operator" },
    pages: [{ part: "levels", title: "Levels of the lake" }],
  },
  {
    ...{ id: "water", title: "For the water works or the lake’s monitoring" },
    pages: [{ part: "lake", title: "The lake’s water", keys: waterKeys }],
  },
  {
    ...{ id: "office", title: "For the lake office" },
    pages: [
      { part: "lake", title: "The lake", keys: ["depthType", "airTemperature", "humidity"] },
      { part: "boats", title: "Boats" },
      { part: "options", title: "Each program option" },
      { part: "money", title: "Money" },
    ],
  },
];

/** What to ask of whom: the fields of a study that say where their figures are found. */
export const checklists = (): Checklist[] =>
  [
    ...recipients.map(({ id, title, pages }) => ({
      ...{ id, title },
      things: pages.map(({ part, title: thing, keys }) => ({ thing, items: askedOfPage(part, keys) })),
    })),
    ...waysOfStructures().map(({ value, label, field }) => ({
      ...{ id: value, title: `${label}, for whoever runs it` },
      things: [{ thing: label, items: field.fields.flatMap((each) => asked(each, [])) }],
    })),
  ].filter(({ things }) => things.some(({ items }) => items.length > 0));

function askedOfPage(id: string, keys: readonly string[] | undefined): Asked[] {
  const part = partOf(id);
  if (!part) return [];
  const list = sectionFields(part.section);
  const fields = part.keys.length > 0 ? fieldsOfPart(part) : list?.kind === "list" ? groupIn(list.item) : [];
  return fields.filter(({ key }) => !keys || keys.includes(key)).flatMap((field) => asked(field, []));
}

const sectionFields = (section: string): Field | undefined =>
  studyFields().fields.find(({ key }) => key === section)?.field;

const groupIn = (field: Field): readonly NamedField[] => (field.kind === "group" ? field.fields : []);

/** Each kind of structure has a list of its own. */
function waysOfStructures() {
  const list = sectionFields("structures");
  return list?.kind === "list" && list.item.kind === "kinds" ? list.item.ways : [];
}

/** A field with those inside it, told by their ways: "Rack, clear spacing". */
function asked({ label, help, where, field }: NamedField, way: readonly string[]): Asked[] {
  const names = [...way, way.length === 0 ? label : lowered(label)];
  const own = where === "" ? [] : [{ what: names.join(", "), help, where: raised(where) }];
  return [...own, ...insideOf(field).flatMap((each) => asked(each, names))];
}

/** As the beginning of a cell. */
const raised = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

function insideOf(field: Field): readonly NamedField[] {
  switch (field.kind) {
    case "group":
      return field.fields;
    case "list":
      return insideOf(field.item);
    case "kinds":
      return field.ways.flatMap((way) => way.field.fields);
    case "either":
      return field.ways.flatMap((way) => insideOf(way.field));
    default:
      return [];
  }
}
