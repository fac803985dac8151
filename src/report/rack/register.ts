import { counted } from "../../counted.js";
import type { Structure } from "../../model/structures/kinds.js";
import type { ReportContext } from "../document/context.js";
import { significant } from "../words/format.js";
import { head, num, row, type TableView } from "../words/view-types.js";

const kindNames: Record<Structure["kind"], string> = {
  intake: "intake",
  hydropower: "power plant",
  "service-line": "service lines",
  dock: "dock",
  ramp: "ramp",
  "lake-wide": "lake-wide",
};

/** Every structure of the study, in its order, with where it stands and what it is measured by. */
export function registerTable(context: ReportContext): TableView {
  const { comparison, format, bearerName } = context;
  return {
    id: "table-register",
    caption: "Register of structures",
    head: head(
      "Structure",
      "Kind",
      num(`Elevation, ${format.unit("elevation")}`),
      "What it is measured by",
      "Who bears it",
    ),
    rows: comparison.structures.map(({ structure }) =>
      row(
        structure.name,
        kindNames[structure.kind],
        num(elevationText(structure, context)),
        sizeText(structure, context),
        bearerName(structure.bearer),
      ),
    ),
    compact: true,
  };
}

function elevationText(structure: Structure, { format }: ReportContext): string {
  const number = (elevation: number) => format.number(elevation, "elevation");
  switch (structure.kind) {
    case "intake":
    case "hydropower":
    case "service-line":
      return number(structure.elevation);
    case "dock":
      return structure.floating || structure.elevation === undefined ? "floats" : number(structure.elevation);
    case "ramp":
      return `${number(structure.bottomElevation)}–${number(structure.topElevation)}`;
    case "lake-wide":
      return "–";
  }
}

function sizeText(structure: Structure, { format }: ReportContext): string {
  switch (structure.kind) {
    case "intake":
      return `demand up to ${format.quantity(Math.max(...structure.demand), "flow")}, conduit ${bore(structure.conduit, format)}`;
    case "hydropower":
      return `${counted(structure.units, "unit")}, up to ${format.quantity(Math.max(...structure.flow), "flow")} each, penstock ${bore(structure.penstock, format)}`;
    case "service-line":
      return `${counted(structure.count, "line")}, ${bore(structure, format)}`;
    case "dock":
      return `${counted(structure.count, "piece")}, ${format.quantity(structure.wettedArea, "area")} wetted each`;
    case "ramp":
      return `${format.quantity(structure.width, "length")} wide, slope ${significant(structure.slope, 3)}`;
    case "lake-wide":
      return `${counted(structure.items.length, "yearly duty", "yearly duties")}`;
  }
}

const bore = (
  { diameter, length }: { readonly diameter: number; readonly length: number },
  format: ReportContext["format"],
) => `${format.quantity(diameter, "smallLength")} × ${format.quantity(length, "length")}`;
