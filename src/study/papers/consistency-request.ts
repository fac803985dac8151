import { counted } from "../../counted.js";
import type { SoundParts } from "../checks/sound-parts.js";
import type { SourceDocument } from "../format/request-schema.js";
import { type Contradiction, exactlyOne } from "../reading/contradiction.js";

type Path = readonly PropertyKey[];

/** Contradictions in what a request says of staff, costs of starting and who pays. */
export function requestProblems({ report, money, options = [] }: SoundParts): Contradiction[] {
  const sources = report?.ask.sources ?? [];
  const path = (index: number) => ["report", "ask", "sources", index];
  return [
    ...sources.flatMap((source, index) => sourceProblems(source, path(index))),
    ...(money ? payerProblems(sources, money.bearers, path) : []),
    ...togetherProblems(sources, path),
    ...options.flatMap((option, index) => [
      ...hoursProblems(option, ["options", index, "staff"]),
      ...(money ? startProblems(option, ["options", index, "equipment"], money.horizon) : []),
    ]),
  ];
}

function sourceProblems(source: SourceDocument, path: Path): Contradiction[] {
  const { from, to, share, match } = source;
  const problems: Contradiction[] = exactlyOne(source, "share", "amount");
  if (from !== undefined && to !== undefined && to < from) {
    problems.push({
      path: ["to"],
      found: `ends with FY ${to}, before it starts with FY ${from}`,
      allowed: `a fiscal year from ${from}`,
      remedy: "Correct the first or the last fiscal year.",
    });
  }
  if (share && match && share.value + match.value > 1) {
    problems.push({
      path: ["share"],
      found: `${share.text} beside a match of ${match.text}`,
      allowed: "a share and a match that make up at most 100 %",
      remedy: "Lower the share to what the match leaves.",
    });
  }
  return problems.map((each) => ({ ...each, path: [...path, ...each.path] }));
}

function payerProblems(
  sources: readonly SourceDocument[],
  bearers: ReadonlyArray<{ readonly id: string }>,
  path: (index: number) => Path,
): Contradiction[] {
  const known = bearers.map(({ id }) => id);
  return sources.flatMap(({ payer }, index) =>
    payer === undefined || known.includes(payer)
      ? []
      : [
          {
            path: [...path(index), "payer"],
            found: `"${payer}"`,
            allowed: `an id from money.bearers: ${known.join(", ")}`,
          },
        ],
  );
}

/** Binary rounding error allowed in a sum of shares. */
const tolerance = 1e-9;

/** Shares of one part of the cost that come to more than all of it in a year: told at the last of them. */
function togetherProblems(
  sources: readonly SourceDocument[],
  path: (index: number) => Path,
): Contradiction[] {
  return sources.flatMap((source, index) => {
    const { share } = source;
    if (!share) return [];
    const before = sources.slice(0, index).filter((other) => other.share && overlap(source, other));
    const sum = before.reduce((total, other) => total + (other.share?.value ?? 0), share.value);
    return before.length > 0 && sum > 1 + tolerance && sum - share.value <= 1 + tolerance
      ? [
          {
            path: [...path(index), "share"],
            found: `${share.text}, ${Number((sum * 100).toFixed(4))} % of the same cost together with “${before.map(({ name }) => name).join("”, “")}”`,
            allowed: "shares of a cost that add up to at most 100 % in each fiscal year",
            remedy: "Lower a share, or let one end before the other starts.",
          },
        ]
      : [];
  });
}

function overlap(one: SourceDocument, other: SourceDocument): boolean {
  const { from = 0, to = Infinity, paysFor } = one;
  const isAtOnce = from <= (other.to ?? Infinity) && (other.from ?? 0) <= to;
  return isAtOnce && (!paysFor || !other.paysFor || paysFor.some((part) => other.paysFor?.includes(part)));
}

type OptionDocument = NonNullable<SoundParts["options"]>[number];

function hoursProblems({ staff }: OptionDocument, path: Path): Contradiction[] {
  return staff.flatMap(({ hoursPerYear, leaveHours = 0, trainingHours = 0 }, index) =>
    leaveHours + trainingHours > hoursPerYear
      ? [
          {
            path: [...path, index, leaveHours > 0 ? "leaveHours" : "trainingHours"],
            found: `${counted(leaveHours, "hour")} of leave and ${counted(trainingHours, "hour")} of training`,
            allowed: `together at most the hours paid, ${hoursPerYear.toLocaleString("en-US")}`,
            remedy: "Lower them, or raise the hours paid.",
          },
        ]
      : [],
  );
}

function startProblems({ equipment }: OptionDocument, path: Path, horizon: number): Contradiction[] {
  return equipment.flatMap(({ oneTime, life }, index) =>
    oneTime && life < horizon
      ? [
          {
            path: [...path, index, "life"],
            found: `a cost of starting that lasts ${counted(life, "year")} of ${horizon}`,
            allowed: `at least the years of the study, ${horizon}: it is never paid again`,
            remedy: "Enter the years of the study, or take out oneTime for a thing that is replaced.",
          },
        ]
      : [],
  );
}
