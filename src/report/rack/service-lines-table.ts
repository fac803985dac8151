import { at } from "../../lists.js";
import { fouledPipe } from "../../model/hydraulics/fouled-pipe.js";
import { waterwayFlow } from "../../model/hydraulics/waterway.js";
import type { Layer } from "../../model/mussels/layer.js";
import type { LakeContext } from "../../model/structures/context.js";
import { pipesOf } from "../../model/structures/kinds.js";
import { cleanLine, type SmallLine, serviceShare } from "../../model/structures/small-line.js";
import type { ReportContext } from "../document/context.js";
import { percent } from "../words/format.js";
import { head, num, row, type TableView } from "../words/view-types.js";

/** Cooling-water and other small lines: what the head drives through them, and what they still do if left to foul. */
export function serviceLinesTable({ comparison, format }: ReportContext): TableView | undefined {
  const lake = at(comparison.schedules[0].contexts, 0);
  const rows = comparison.structures.flatMap(({ structure, components }) =>
    pipesOf(structure).flatMap(({ name, line: alike }) => {
      const layer = components.find((each) => each.name === name)?.untouchedLayer;
      if (!alike || !layer) return [];
      const { line, count } = alike;
      const { clean, fouled } = drivenFlows(line, layer, lake);
      return [
        row(
          `${structure.name}, ${name}`,
          num(String(count)),
          num(format.number(line.availableHead, "length")),
          num(format.number(line.requiredFlow, "flow")),
          num(format.number(clean, "flow")),
          num(format.number(fouled, "flow")),
          num(percent(serviceShare(line, lake)(layer), 3)),
          line.exchanger ? "heat" : "water",
        ),
      ];
    }),
  );
  if (rows.length === 0) return undefined;
  return {
    id: "table-service-lines",
    caption: "Service lines, clean and if left to foul",
    head: head(
      "Line",
      num("Lines alike"),
      num(`Head to spend, ${format.unit("length")}`),
      num(`Flow needed, ${format.unit("flow")}`),
      num(`Driven clean, ${format.unit("flow")}`),
      num(`Driven fouled, ${format.unit("flow")}`),
      num("Service left"),
      "Of what",
    ),
    rows,
    note: "Service left: water delivered, at most the need, or where a heat exchanger is given the heat carried off, over the same when clean.",
  };
}

function drivenFlows(line: SmallLine, layer: Layer, lake: LakeContext) {
  const clean = cleanLine(line, lake);
  const { roughness, viscosity } = lake;
  return {
    clean: waterwayFlow(clean, line.availableHead, viscosity),
    fouled: waterwayFlow(fouledPipe(clean, layer, roughness), line.availableHead, viscosity),
  };
}
