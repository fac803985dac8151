import type { EvidenceLakes, EvidenceRegion, EvidenceSeason, FoundingEvidence } from "./evidence.js";
import { rangesOf, regionRanges } from "./places.js";

/** A row of the published counts, for the record of what is shipped. */
type EvidencePart = readonly [what: string, shown: string, content: unknown];

/** Every row of the published counts by its place, with what it says in words. */
export const evidenceParts = (evidence: FoundingEvidence): EvidencePart[] =>
  [
    ...rangesOf({ ...evidence, regions: [] }).map(rangePart),
    ...(["prior", "lakePrior"] as const).map((name): EvidencePart => {
      const { median, spread, betweenRegions } = evidence[name];
      return [name, `median ${median}, spread ${spread}, between regions ${betweenRegions}`, evidence[name]];
    }),
    ...evidence.regions.flatMap(regionParts),
    ...evidence.lakeYears.map((row): EvidencePart => [row.id, lakesText(row), row]),
  ].map(([what, shown, content]) => [`evidence of foundings, ${what}`, shown, content]);

function regionParts(region: EvidenceRegion): EvidencePart[] {
  const { id, name, period, reach, kind, foundings } = region;
  const seen = foundings.map(({ count, weight }) => `${count} (weight ${weight})`).join(", ");
  return [
    [id, `${name} ${period}, ${reach}, foundings ${seen}`, { id, name, period, reach, kind, foundings }],
    ...regionRanges(region).map(([place, range]) => rangePart([`${id}, ${place}`, range])),
    ...(region.kind === "inspected"
      ? region.seasons.map((row): EvidencePart => [`${id}, season ${row.season}`, seasonText(row), row])
      : [
          [
            `${id}, moves`,
            `${region.moves.perYear} a year, ${region.moves.years} years`,
            region.moves,
          ] as const,
        ]),
  ];
}

const rangePart = ([place, range]: ReturnType<typeof regionRanges>[number]): EvidencePart => [
  place,
  `${range.low} to ${range.high}, ${range.basis}`,
  range,
];

const counted = ["inspected", "highRisk", "fouled", "alive"] as const;

function seasonText(row: EvidenceSeason): string {
  const found = counted.flatMap((name) => (row[name] === undefined ? [] : [`${name} ${row[name]}`]));
  return `${found.join(", ") || "no count"}${row.within === undefined ? "" : `, within ${row.within}`}`;
}

const lakesText = ({ name, infested, lakes, years, group }: EvidenceLakes): string =>
  `${name}, ${group}: ${infested} of ${lakes} in ${years} years`;
