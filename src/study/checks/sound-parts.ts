import type { WrittenStudy } from "../format/schema.js";
import type { Contradiction } from "../reading/contradiction.js";
/** Well-formed parts of a document; the others are absent and reported elsewhere. */
export interface SoundParts {
  readonly study?: WrittenStudy["study"] | undefined;
  readonly lake?: WrittenStudy["lake"] | undefined;
  readonly boats?: WrittenStudy["boats"] | undefined;
  readonly options?: WrittenStudy["options"] | undefined;
  readonly money?: WrittenStudy["money"] | undefined;
  readonly overrides?: WrittenStudy["overrides"] | undefined;
  readonly search?: WrittenStudy["search"] | undefined;
  readonly report?: WrittenStudy["report"] | undefined;
  readonly structures: ReadonlyArray<{
    readonly index: number;
    readonly value: WrittenStudy["structures"][number];
  }>;
}

/** Binary rounding error allowed in a sum of shares, which split cents. */
const bearerTolerance = 1e-9;

/** Unknown bearers of a structure or response, and shares that do not add up to 100 %. */
export function bearerShareProblems(
  bearer: SoundParts["structures"][number]["value"]["bearer"],
  path: Contradiction["path"],
  known: readonly string[],
): Contradiction[] {
  const ids = typeof bearer === "string" ? [bearer] : bearer.map(({ id }) => id);
  const problems: Contradiction[] = ids
    .filter((id) => !known.includes(id))
    .map((id) => ({ path, found: `"${id}"`, allowed: `an id from money.bearers: ${known.join(", ")}` }));
  if (typeof bearer === "string") return problems;
  const sum = bearer.reduce((total, { share }) => total + share.value, 0);
  return Math.abs(sum - 1) <= bearerTolerance
    ? problems
    : [
        ...problems,
        {
          path,
          found: `shares that add up to ${Number((sum * 100).toFixed(4))} %`,
          allowed: "shares that add up to 100 %",
        },
      ];
}
