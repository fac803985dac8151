import type { StructureBase } from "../../src/model/structures/inputs.js";
import { serviceLineComponents } from "../../src/model/structures/kinds/service-line.js";
import { linePart } from "../../src/model/structures/pipe-part.js";
import type { SmallLine } from "../../src/model/structures/small-line.js";
import { atOneElevation, boreWords, type StructureKind } from "../../src/model/structures/structure-kind.js";

/** A kind that the project does not have: the line that feeds a fish hatchery from the lake. */
interface HatcheryLine extends StructureBase, SmallLine {
  readonly kind: "hatchery-line";
  readonly elevation: number;
  /** What a day without fresh water costs in fish. */
  readonly fishLossPerDay: number;
}

const part = "supply line";

const asServiceLine = (line: HatcheryLine) =>
  ({
    ...line,
    kind: "service-line",
    count: 1,
    oxidantAllowed: false,
    shortageCostPerDay: line.fishLossPerDay,
  }) as const;

export const hatcheryLine: StructureKind<HatcheryLine> = {
  kind: "hatchery-line",
  title: "Hatchery supply line",
  name: "hatchery line",
  commonFields: ["roughness"],
  isBuilt: true,
  hasPublishedCosts: false,
  lowestField: "elevation",
  reach: atOneElevation,
  size: boreWords,
  inlet: ({ elevation, requiredFlow }) => ({
    elevation,
    flow: Array.from({ length: 12 }, () => requiredFlow),
  }),
  pipes: (line) => [linePart(part, [], { line, count: 1 })],
  components: (line, context) =>
    serviceLineComponents(asServiceLine(line), context).map((component) => ({ ...component, name: part })),
  lowered: (line, { fall, flowShare }) => ({
    ...line,
    elevation: line.elevation - fall,
    requiredFlow: line.requiredFlow * flowShare,
  }),
};
