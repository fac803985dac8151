import { sumOf } from "../../lists.js";
import type { EstimatedId } from "../../model/founding/estimated.js";
import { countedFouled } from "../../model/founding/exposure.js";
import type { FoundingEstimate } from "../../model/founding/founding-estimate.js";
import { type Basis, softestOf } from "../basis.js";
import type { EvidenceRegion, FoundingEvidence, Origin } from "./evidence.js";
import { regionOrigins } from "./places.js";

/** What stands beside an estimated figure. */
export interface EstimatedWords {
  readonly title: string;
  readonly basis: Basis;
  readonly counts: string;
}

type WordsOf<Id extends EstimatedId> = Readonly<Record<Id, EstimatedWords>>;

/** @param evidence of the regions that are held */
export const estimatedWords = (
  evidence: FoundingEvidence,
  estimate: FoundingEstimate,
): WordsOf<EstimatedId> => ({
  ...launchWords(evidence),
  ...lakeWords(evidence),
  ...livingWords(evidence, estimate),
});

function launchWords({
  regions,
}: FoundingEvidence): WordsOf<"arrival.founding-unknown" | "arrival.founding-near" | "arrival.founding-far"> {
  const from = (title: string, held: readonly EvidenceRegion[]) =>
    words(
      title,
      `${regionsText(held)}. Per launch of a boat with mussels on it, dead or alive, in suitable water`,
      originsIn(held),
    );
  const ofReach = (wanted: EvidenceRegion["reach"]) => regions.filter(({ reach }) => reach === wanted);
  return {
    "arrival.founding-unknown": from(
      "chance that a fouled launch of unknown origin founds a population",
      regions,
    ),
    "arrival.founding-near": from(
      "chance that a fouled launch from near waters founds a population",
      ofReach("near"),
    ),
    "arrival.founding-far": from(
      "chance that a fouled launch from far waters founds a population",
      ofReach("far"),
    ),
  };
}

function lakeWords({
  lakeYears,
}: FoundingEvidence): WordsOf<"arrival.base-rate-open" | "arrival.base-rate-inspected"> {
  const [open, inspected] = (["open", "inspected"] as const).map((wanted) =>
    lakeYears.filter(({ group }) => group === wanted),
  );
  return {
    "arrival.base-rate-open": words(
      "yearly rate of lakes in regions without checks",
      lakesText(open ?? []),
      open ?? [],
    ),
    "arrival.base-rate-inspected": words(
      "yearly rate of lakes in regions with checks",
      lakesText(inspected ?? []),
      inspected ?? [],
    ),
  };
}

const living = "living share of fouled boats";

function livingWords(
  { regions, living: { near, far } }: FoundingEvidence,
  { longHauls: { alive, examined }, perLivingLaunch }: FoundingEstimate,
): WordsOf<"arrival.living-share-near" | "arrival.living-share-far" | "arrival.living-share-unknown"> {
  const judged = ({ low, high }: typeof near) => `judged, ${low} to ${high} (5 % to 95 %)`;
  const perLiving = Number(perLivingLaunch.p50.toPrecision(2));
  return {
    "arrival.living-share-near": words(`${living} hours to two days out of infested water`, judged(near), [
      near,
    ]),
    "arrival.living-share-far": words(
      `${living} weeks out of infested water`,
      examined > 0 ? `${alive} alive of ${examined}` : judged(far),
      examined > 0 ? lookedAt(regions) : [far],
    ),
    "arrival.living-share-unknown": words(
      `${living} from unknown waters`,
      `the chance per fouled launch over that per launch with living mussels, ${perLiving}`,
      [near, far, ...originsIn(regions)],
    ),
  };
}

const words = (title: string, counts: string, origins: readonly Origin[]): EstimatedWords => ({
  title,
  counts,
  basis: origins.length === 0 ? "judged" : softestOf(origins.map(({ basis }) => basis)),
});

const originsIn = (regions: readonly EvidenceRegion[]): Origin[] =>
  regions.flatMap((region) => regionOrigins(region).map(([, origin]) => origin));

/** Rows that say how many mussels lived. */
const lookedAt = (regions: readonly EvidenceRegion[]): Origin[] =>
  regions.flatMap((region) =>
    region.kind === "inspected" ? region.seasons.filter(({ alive }) => alive !== undefined) : [],
  );

const withoutCounts = "none are held, so that what was believed before any count stands";

function regionsText(regions: readonly EvidenceRegion[]): string {
  if (regions.length === 0) return withoutCounts;
  const foundings = regions.flatMap((region) => region.foundings.map(({ count, weight }) => count * weight));
  const parts = regions.map((region) =>
    region.kind === "moves"
      ? `${region.name} ${region.period}, ${number(region.moves.perYear)} fouled moves a year`
      : `${region.name} ${region.period}, ${fouledText(region)}`,
  );
  return `${parts.join("; ")}; foundings by their weights ${number(sumOf(foundings))}`;
}

function fouledText({ seasons, uncounted: { low, high } }: EvidenceRegion & { readonly kind: "inspected" }) {
  const counted = countedFouled(seasons);
  return `${number(counted + low)} to ${number(counted + high)} fouled boats`;
}

const number = (value: number) => value.toLocaleString("en-US", { maximumFractionDigits: 1 });

const lakesText = (rows: FoundingEvidence["lakeYears"]): string =>
  rows.length === 0
    ? withoutCounts
    : rows
        .map(
          ({ name, infested, lakes, years }) => `${name} ${infested} of ${number(lakes)} in ${years} years`,
        )
        .join("; ");
