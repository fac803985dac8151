import type { AssumptionSet } from "../../assumptions/entry.js";
import type { EvidenceLakes, EvidenceRegion, Origin } from "../../assumptions/founding/evidence.js";
import { foundingBacktest } from "../../assumptions/founding/founding-backtest.js";
import type { Assumed } from "../../model/assumed.js";
import type { Comparison } from "../../model/compare.js";
import { interceptedRange, lakeYearsAtRisk, yearlyRate } from "../../model/founding/exposure.js";
import type { FoundingEstimate } from "../../model/founding/founding-estimate.js";
import type { LeftOut } from "../../model/founding/leave-one-out.js";
import type { Ninety } from "../../model/founding/log-density.js";
import type { OptionBalance } from "../../model/option-balance.js";
import type { StudyDocument } from "../format/schema.js";

/** The published counts behind the chance of a founding, and what they predict of each other. */
export interface TracedChance {
  readonly estimate: FoundingEstimate;
  readonly regions: readonly TracedRegion[];
  readonly lakes: readonly TracedLakes[];
  /** The comparison with foundings that go with launches, and with them to a higher power. */
  readonly shapes: readonly ShapeVariant[];
}

export interface TracedRegion {
  readonly region: Pick<EvidenceRegion, "id" | "name" | "period" | "reach">;
  /** Fouled boats found in these years; absent where the moves of boats themselves are known. */
  readonly intercepted: Ninety | undefined;
  /** Of fouled arrivals, the share that meets an inspector; absent as above. */
  readonly coverage: Ninety | undefined;
  /** Share bound for clean water of the region. */
  readonly destined: Ninety;
  readonly backtest: LeftOut;
  /** Keys of the sources, each once. */
  readonly sources: readonly string[];
}

export interface TracedLakes {
  readonly row: Pick<EvidenceLakes, "group" | "name" | "period" | "infested" | "lakes" | "source">;
  readonly lakeYears: number;
  /** −ln(1 − n/N)/T. */
  readonly rate: number;
  /** Absent for rows that are shown and not estimated from. */
  readonly backtest: LeftOut | undefined;
}

export interface ShapeVariant {
  readonly shape: number;
  /** Whether the answer uses it. */
  readonly isUsed: boolean;
  readonly baseline: Comparison["baseline"];
  readonly options: readonly OptionBalance[];
}

export interface ChanceTracing {
  readonly document: StudyDocument;
  readonly assumptions: AssumptionSet;
  readonly comparison: Comparison;
  readonly assumed: Assumed;
  /** The comparison as it would be with a study's own exponent of launches. */
  readonly withShape: (shape: number) => Comparison;
}

export function tracedChance(tracing: ChanceTracing): TracedChance {
  const { document, assumptions } = tracing;
  const { foundingEvidence: evidence } = assumptions;
  const backtest = foundingBacktest(evidence, document.boats.chance.leaveOutRegions);
  const regions = new Map(evidence.regions.map((region) => [region.id, region]));
  const lakes = new Map(backtest.lakes.map((each) => [each.id, each]));
  return {
    estimate: backtest.estimate,
    regions: backtest.regions.flatMap((each) => {
      const region = regions.get(each.id);
      return region ? [tracedRegion(region, each)] : [];
    }),
    lakes: evidence.lakeYears.map((row) => ({
      row,
      lakeYears: lakeYearsAtRisk(row),
      rate: row.untilInfested ? row.infested / lakeYearsAtRisk(row) : yearlyRate(row),
      backtest: lakes.get(row.id),
    })),
    shapes: shapeVariants(tracing),
  };
}

function tracedRegion(region: EvidenceRegion, backtest: LeftOut): TracedRegion {
  const shared = { region, backtest, sources: sourcesOf(region) };
  return region.kind === "moves"
    ? { ...shared, intercepted: undefined, coverage: undefined, destined: region.toCleanLake }
    : {
        ...shared,
        intercepted: interceptedRange(region.seasons, region.uncounted),
        coverage: region.coverage,
        destined: region.destined,
      };
}

function sourcesOf(region: EvidenceRegion): string[] {
  const origins: readonly Origin[] =
    region.kind === "moves"
      ? [region.moves, region.carrying, region.toCleanLake, ...region.foundings]
      : [...region.seasons, region.uncounted, region.coverage, region.destined, ...region.foundings];
  return [...new Set(origins.map(({ source }) => source))];
}

/** Foundings go with launches to these powers; the first is that of launches which act by themselves. */
const shapes = [1, 1.5];

function shapeVariants({ comparison, assumed, withShape }: ChanceTracing): ShapeVariant[] {
  const used = assumed("arrival.shape");
  return [...new Set([...shapes, used])]
    .sort((one, other) => one - other)
    .map((shape) => {
      const { baseline, options } = shape === used ? comparison : withShape(shape);
      return { shape, isUsed: shape === used, baseline, options };
    });
}
