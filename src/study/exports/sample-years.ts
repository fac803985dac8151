import { counted } from "../../counted.js";
import type { SampleKind } from "../../model/risk/detection.js";

/** What a line of a file of samples says. */
export interface Sample {
  readonly date: string;
  readonly place: string;
  readonly kind: SampleKind | "other";
  readonly result: "none" | "mussels" | "unconfirmed";
}

/** Samples of a year; other kinds, of which nothing is known, are counted apart. */
export interface SampleYear {
  readonly year: number;
  readonly counts: Readonly<Record<SampleKind, number>>;
  readonly other: number;
  /** As far as samples tell theirs. */
  readonly places: number;
  readonly mussels: number;
  readonly unconfirmed: number;
}

/**
 * Samples by year. A line is a tow or an eDNA sample; a plate hangs for the season and is counted once a year at each
 * place, and a search once a day there, however many lines tell of it.
 */
export function sampleYears(samples: readonly Sample[]): SampleYear[] {
  const byYear = new Map<number, Sample[]>();
  for (const sample of samples) {
    const year = Number(sample.date.slice(0, 4));
    const known = byYear.get(year);
    if (known) known.push(sample);
    else byYear.set(year, [sample]);
  }
  return [...byYear].sort(([one], [other]) => one - other).map(([year, found]) => yearOf(year, found));
}

function yearOf(year: number, samples: readonly Sample[]): SampleYear {
  const of = (kind: Sample["kind"]) => samples.filter((each) => each.kind === kind);
  const distinct = (found: readonly Sample[], key: (sample: Sample) => string) =>
    new Set(found.map(key)).size;
  return {
    year,
    counts: {
      planktonTows: of("planktonTows").length,
      settlementPlates: distinct(of("settlementPlates"), ({ place }) => place),
      searches: distinct(of("searches"), ({ date, place }) => `${date} ${place}`),
      ednaSamples: of("ednaSamples").length,
    },
    other: of("other").length,
    places: distinct(samples, ({ place }) => place) - (samples.some(({ place }) => place === "") ? 1 : 0),
    mussels: samples.filter(({ result }) => result === "mussels").length,
    unconfirmed: samples.filter(({ result }) => result === "unconfirmed").length,
  };
}

/** A year in a sentence. */
export function sampleYearText({ year, counts, other, places, mussels, unconfirmed }: SampleYear): string {
  const taken = [
    counted(counts.planktonTows, "plankton tow"),
    counted(counts.settlementPlates, "settlement plate"),
    counted(counts.searches, "search", "searches"),
    counted(counts.ednaSamples, "eDNA sample"),
    `${other} of other kinds`,
  ].filter((each) => !each.startsWith("0 "));
  const where = places > 0 ? `, at ${counted(places, "place")}` : "";
  return `${year}${where}: ${taken.join(", ")}; ${mussels} with mussels, ${unconfirmed} unconfirmed.`;
}
