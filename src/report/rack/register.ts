import type { SizeWord } from "../../model/structures/structure-kind.js";
import type { TracedStructure } from "../../study/traced/traced-structure.js";
import type { ReportContext } from "../document/context.js";
import { significant } from "../words/format.js";
import { head, num, row, type TableView } from "../words/view-types.js";
import { allTold, type ToldStructures, toldStructures } from "./told-structures.js";

/** Structures for which the printed register has room. */
const mostRows = 60;

/** Structures of the study, in its order, with where each stands and what it is measured by. */
export const registerTable = (context: ReportContext): TableView =>
  tableOf(context, toldStructures(context, mostRows), "table-register");

/** Of all structures, for the tables as files; absent where print has them. */
export const everyRegisterTable = (context: ReportContext): TableView | undefined =>
  toldStructures(context, mostRows).others.length === 0
    ? undefined
    : tableOf(context, allTold(context), "table-every-register");

function tableOf(context: ReportContext, { told, others }: ToldStructures, id: string): TableView {
  const { format, bearerName } = context;
  return {
    id,
    caption: "Register of structures",
    head: head(
      "Structure",
      "Kind",
      num(`Elevation, ${format.unit("elevation")}`),
      "What it is measured by",
      "Who pays",
    ),
    rows: told.map((structure) =>
      row(
        structure.result.structure.name,
        structure.kindName,
        num(elevationText(structure, context)),
        sizeText(structure, context),
        bearerName(structure.result.structure.bearer),
      ),
    ),
    ...(others.length === 0
      ? {}
      : {
          note: `The ${told.length} with the highest expected cost; ${others.length} more are in the tables as files, every-register.csv.`,
        }),
    compact: true,
  };
}

function elevationText({ reach }: TracedStructure, { format }: ReportContext): string {
  const number = (elevation: number) => format.number(elevation, "elevation");
  if (!reach) return "–";
  if (reach.floats) return "floats";
  const { low, high } = reach;
  return low === high ? number(low) : `${number(low)}–${number(high)}`;
}

const sizeText = ({ size }: TracedStructure, context: ReportContext) =>
  size.map((word) => wordText(word, context)).join("");

function wordText(word: SizeWord, { format }: ReportContext): string {
  if (typeof word === "string") return word;
  const { value, measure } = word;
  return measure === "ratio" ? significant(value, 3) : format.quantity(value, measure);
}
