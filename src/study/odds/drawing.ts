import { at } from "../../lists.js";
import type { Assumed } from "../../model/assumed.js";
import type { StudyInput } from "../../model/inputs.js";
import type { ClassChance } from "../../model/program/class-chances.js";
import type { StudyDocument } from "../format/schema.js";
import type { PreparedStudy } from "../prepare/prepared.js";
import { boatsAlone, boatsToModel, toModel } from "../prepare/to-model.js";
import { trafficOf } from "../prepare/traffic.js";
import { vesselChances } from "../prepare/vessel-chances.js";
import { type RangedQuantity, rangedQuantities, withValues } from "../reading/ranged.js";
import { type TypedQuantity, typedQuantities } from "../typed/typed-quantities.js";
import { valueAtPlace } from "../typed/typed-range.js";
import { hydrologicYearId } from "./odds.js";
import { classChanceId } from "./uncertain-inputs.js";

type Values = ReadonlyMap<string, number>;

/** Turns drawn values into what the model takes. */
export interface Drawing {
  readonly lake: (values: Values) => Drawn;
  /** The same with other boats and chances. */
  readonly chances: (lake: Drawn, values: Values) => Drawn;
}

/** A study with values in place. */
interface Drawn extends Pick<PreparedStudy, "chances" | "traffic"> {
  readonly document: StudyDocument;
  readonly input: StudyInput;
  readonly source: Assumed;
}

export function drawing(document: StudyDocument, prepared: PreparedStudy): Drawing {
  const ranged = rangedQuantities(document);
  const ofLake = ranged.filter(({ path }) => path[0] !== "boats");
  return {
    lake: lakeDrawing(document, prepared, ofLake),
    chances: chancesDrawing(
      prepared,
      ranged.filter(({ path }) => path[0] === "boats"),
    ),
  };
}

/** With what the author gave with a range of the lake, and with all that is typed as one number. */
function lakeDrawing(
  document: StudyDocument,
  prepared: PreparedStudy,
  ranged: readonly RangedQuantity[],
): Drawing["lake"] {
  const typed = typedQuantities(document, prepared.assumptions);
  const moves = movesOf(typed.flatMap(({ members }) => members));
  const own = { document, chances: prepared.chances, traffic: prepared.traffic, input: prepared.input };
  const { plans } = prepared.input;
  const drawn = (values: Values) => {
    const changed = withValues(document, [...valuesOf(ranged, values), ...typedValues(typed, values)]);
    const read = {
      chances: moves.shares ? vesselChances(changed.boats, prepared.assumed) : prepared.chances,
      traffic: moves.traffic ? trafficOf(changed.boats) : prepared.traffic,
    };
    const input = { ...toModel(changed, { ...read, estimate: prepared.estimate }), plans };
    return { document: changed, ...read, input };
  };
  return (values) => {
    const isMoved = [...ranged, ...typed].some(({ id }) => values.has(id));
    const study = isMoved ? drawn(values) : own;
    return {
      ...study,
      input: inOperatingYear(study.input, values.get(hydrologicYearId)),
      source: (id) => values.get(id) ?? prepared.assumed(id),
    };
  };
}

function chancesDrawing(prepared: PreparedStudy, ofBoats: readonly RangedQuantity[]): Drawing["chances"] {
  const moves = movesOf(ofBoats);
  return (lake, values) => {
    const source: Assumed = (id) => values.get(id) ?? lake.source(id);
    if (ofBoats.length === 0) {
      return { ...lake, input: withClassChances(lake.input, lake.chances, values), source };
    }
    const drawn = withValues(lake.document, valuesOf(ofBoats, values));
    const chances = moves.shares ? vesselChances(drawn.boats, prepared.assumed) : lake.chances;
    const traffic = moves.traffic ? trafficOf(drawn.boats) : lake.traffic;
    const read = { chances, traffic, estimate: prepared.estimate };
    const input = {
      ...lake.input,
      ...(moves.traffic ? boatsToModel(drawn, read) : { boats: boatsAlone(drawn, read) }),
    };
    return { document: drawn, chances, traffic, input: withClassChances(input, chances, values), source };
  };
}

/** Whether shares found fouled must be worked out again for some quantities, and traffic. */
function movesOf(quantities: ReadonlyArray<{ readonly path: readonly PropertyKey[] }>) {
  const ofBoats = quantities.filter(({ path }) => path[0] === "boats");
  return {
    shares: ofBoats.some(({ path }) => path.includes("fouled")),
    traffic: ofBoats.some(({ path }) => fieldsOfTraffic.includes(path[1] ?? "")),
  };
}

/** Fields of the boats from which traffic is worked out. */
const fieldsOfTraffic: readonly PropertyKey[] = ["launches", "sites", "traffic"];

const valuesOf = (ranged: readonly RangedQuantity[], values: Values) =>
  ranged.map(({ id, path, quantity }) => ({ path, value: values.get(id) ?? quantity.value }));

const typedValues = (typed: readonly TypedQuantity[], values: Values) =>
  typed.flatMap(({ id, members }) => {
    const place = values.get(id);
    if (place === undefined) return [];
    return members.map(({ path, quantity, range }) => ({
      path,
      value: valueAtPlace(quantity.value, range, place),
    }));
  });
/** The lake as if each year were one of its record's. */
function inOperatingYear(input: StudyInput, year: number | undefined): StudyInput {
  const { record } = input.lake;
  if (year === undefined || !record) return input;
  return { ...input, lake: { ...input.lake, record: [at(record, year)] } };
}

function withClassChances(
  input: StudyInput,
  chances: readonly ClassChance[],
  values: ReadonlyMap<string, number>,
): StudyInput {
  if (chances.every(({ belief }) => belief === undefined)) return input;
  const classes = input.boats.classes.map((each) => {
    const found = values.get(classChanceId(each.id));
    return found === undefined ? each : { ...each, fouled: found };
  });
  return { ...input, boats: { ...input.boats, classes } };
}
