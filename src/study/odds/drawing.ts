import { at } from "../../lists.js";
import type { Assumed } from "../../model/assumed.js";
import type { StudyInput } from "../../model/inputs.js";
import type { ClassChance } from "../../model/program/class-chances.js";
import type { StudyDocument } from "../format/schema.js";
import type { PreparedStudy } from "../prepare/prepared.js";
import { plainBoats, withUpstream } from "../prepare/to-model.js";
import { rangedQuantities } from "../reading/ranged.js";
import { typedQuantities } from "../typed/typed-quantities.js";
import { boatsDrawing, isOfBoats, type StudyInPlace } from "./boats-drawing.js";
import { type MovedQuantity, numbersIn, type Values } from "./moved-quantities.js";
import { hydrologicYearId } from "./odds.js";
import { classChanceId } from "./uncertain-inputs.js";

/** Turns drawn values into what the model takes. */
export interface Drawing {
  readonly lake: (values: Values) => Drawn;
  /** The same with other boats and chances. */
  readonly chances: (lake: Drawn, values: Values) => Drawn;
}

/** A study with values in place. */
interface Drawn extends StudyInPlace {
  readonly source: Assumed;
}

export function drawing(document: StudyDocument, prepared: PreparedStudy): Drawing {
  const ranged: readonly MovedQuantity[] = rangedQuantities(document);
  const typed = typedQuantities(document, prepared.assumptions).flatMap(({ id, members }) =>
    members.map((member): MovedQuantity => ({ ...member, id })),
  );
  const lakeOf = lakeDrawing(document, prepared, [...ranged, ...typed]);
  const withTypedBoats = boatsDrawing(document, prepared, typed.filter(isOfBoats));
  const withBoats = boatsDrawing(document, prepared, ranged.filter(isOfBoats));
  return {
    lake: (values) => {
      const { boats, chances, input } = withTypedBoats(lakeOf(values), values);
      return {
        boats,
        chances,
        input: inOperatingYear(input, values.get(hydrologicYearId)),
        source: (id) => values.get(id) ?? prepared.assumed(id),
      };
    },
    chances: (lake, values) => {
      const { boats, chances, input } = withBoats(lake, values);
      return {
        boats,
        chances,
        input: withClassChances(input, chances, values),
        source: (id) => values.get(id) ?? lake.source(id),
      };
    },
  };
}

/** Groups of a study that the model has under the same names; what is drawn of papers moves no lake. */
const modelled: readonly PropertyKey[] = ["lake", "structures", "options", "money"];

/** All but the boats, with what the author gave with a range and what is typed as one number. */
function lakeDrawing(
  { boats }: StudyDocument,
  { input, chances }: PreparedStudy,
  quantities: readonly MovedQuantity[],
): (values: Values) => StudyInPlace {
  const own = { boats: plainBoats(boats), chances, input };
  const withDrawn = numbersIn(
    input,
    quantities.filter(({ path: [group = ""] }) => modelled.includes(group)),
  );
  return (values) => {
    const drawn = withDrawn(input, values);
    if (drawn === input) return own;
    return { ...own, input: { ...drawn, structures: withUpstream(drawn.structures) } };
  };
}

/** The lake as if each year were one of its record's. */
function inOperatingYear(input: StudyInput, year: number | undefined): StudyInput {
  const { record } = input.lake;
  if (year === undefined || !record) return input;
  return { ...input, lake: { ...input.lake, record: [at(record, year)] } };
}

function withClassChances(input: StudyInput, chances: readonly ClassChance[], values: Values): StudyInput {
  if (chances.every(({ belief }) => belief === undefined)) return input;
  const classes = input.boats.classes.map((each) => {
    const found = values.get(classChanceId(each.id));
    return found === undefined ? each : { ...each, fouled: found };
  });
  return { ...input, boats: { ...input.boats, classes } };
}
