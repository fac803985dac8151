import { AssumptionError, loadAssumptions } from "../assumptions/load.js";
import { methodDigest } from "../method/method-document.js";
import { assumptionsFolder } from "../report/document/assets.js";
import type { ReadRecord } from "./record.js";

/** Where an issued report was computed by another method than this version's: said, and nothing that speaks against it. */
export function methodSentences(record: ReadRecord): string[] {
  if (!("method" in record)) return [];
  const own = ownDigest();
  if (own === record.method) return [];
  const issued = `It was computed by the method of version ${record.engineVersion}, of digest ${record.method}.`;
  return own === undefined
    ? [`${issued} This version's could not be held beside it, since its assumptions cannot be read.`]
    : [
        `${issued} The method document of this version has another, ${own}: relations, examples, assumptions or sources have changed. That does not speak against the report.`,
      ];
}

let known: string | undefined;

function ownDigest(): string | undefined {
  try {
    known ??= methodDigest(loadAssumptions(assumptionsFolder));
    return known;
  } catch (error) {
    if (error instanceof AssumptionError) return undefined;
    throw error;
  }
}
