import type { SizeWord } from "../../model/structures/structure-kind.js";
import type { TracedStructure } from "../../study/traced/traced-structure.js";
import type { ReportContext } from "../document/context.js";
import { significant } from "../words/format.js";
import { head, num, row, type TableView } from "../words/view-types.js";

/** Every structure of the study, in its order, with where it stands and what it is measured by. */
export function registerTable(context: ReportContext): TableView {
  const { traced, format, bearerName } = context;
  return {
    id: "table-register",
    caption: "Register of structures",
    head: head(
      "Structure",
      "Kind",
      num(`Elevation, ${format.unit("elevation")}`),
      "What it is measured by",
      "Who pays",
    ),
    rows: traced.structures.map((structure) =>
      row(
        structure.result.structure.name,
        structure.kindName,
        num(elevationText(structure, context)),
        sizeText(structure, context),
        bearerName(structure.result.structure.bearer),
      ),
    ),
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
