import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { once } from "../model/computed-once.js";
import { PlainError } from "../plain-error.js";
import { agencyFile } from "./agency.js";
import { readEntries } from "./entries.js";
import type { AssumptionSet } from "./entry.js";
import { evidenceOf } from "./founding/found-evidence.js";
import { evidenceFile } from "./founding/places.js";
import { groupsFile, readGroups } from "./groups.js";
import { habitatFile, readHabitatLakes } from "./habitat/read-lakes.js";
import { planningRatesFile, readPlanningRates } from "./planning-rates.js";
import { plansFile } from "./plans.js";
import { priceIndexFile, readPriceIndices } from "./price-indices.js";
import { readAgency, withAgencyFile } from "./read-agency.js";
import { alterationsAtBuild, type ReadAtBuild } from "./read-at-build.js";
import { alterationsOf } from "./shipped.js";
import { readSources, sourcesFile } from "./sources.js";
import { type AssumptionFiles, readYaml } from "./yaml-file.js";

/** Wrong assumption files: for the engineer, at start. Each problem names file, entry, value and remedy. */
export class AssumptionError extends PlainError {
  constructor(readonly problems: readonly string[]) {
    super(`The assumptions cannot be used.\n${problems.map((problem) => `  ${problem}`).join("\n")}`);
  }
}

/** The assumption files of a folder, unread. @throws AssumptionError where the folder holds none */
export function assumptionFiles(folder: string): AssumptionFiles {
  if (!existsSync(join(folder, sourcesFile))) {
    throw new AssumptionError([
      `${folder}: holds no ${sourcesFile}. Point to the project's folder of assumptions.`,
    ]);
  }
  const names = readdirSync(folder).filter((name) => name.endsWith(".yaml"));
  return new Map(names.sort().map((name) => [name, readFileSync(join(folder, name), "utf8")]));
}

/**
 * Reads every assumption file of a folder and the sources beside them.
 * @param studies a folder that may hold the own values of an agency
 * @throws AssumptionError with all problems at once
 */
export function loadAssumptions(folder: string, studies?: string): AssumptionSet {
  const files = assumptionFiles(folder);
  return readAssumptions(studies === undefined ? files : withAgencyFile(files, studies));
}

const otherFiles = [
  sourcesFile,
  plansFile,
  priceIndexFile,
  planningRatesFile,
  groupsFile,
  evidenceFile,
  habitatFile,
  agencyFile,
];

/**
 * Reads the texts of a folder of assumptions.
 * @param later for files of an earlier version: the assumptions of this one, in place of those that there were not yet
 * @throws AssumptionError with all problems at once
 */
export function readAssumptions(files: AssumptionFiles, later?: AssumptionSet): AssumptionSet {
  const problems: string[] = [];
  const sources = new Map([...(later?.sources ?? []), ...readSources(files, problems)]);
  const lists = [...files.keys()].filter((name) => !otherFiles.includes(name)).sort();
  const found = evidenceOf(files, sources, later?.foundingEvidence, problems);
  const { entries, expected, plans, ids } = readEntries(
    files,
    { lists, sources, inPlace: later?.entries, estimated: found?.entries ?? [] },
    problems,
  );
  const priceIndices = readPriceIndices(readYaml(files, priceIndexFile, problems), sources, problems);
  const planningRates = readPlanningRates(files, sources, later?.planningRates, problems);
  const groups = readGroups(readYaml(files, groupsFile, problems), ids, sources, problems);
  const habitatLakes = readHabitatLakes(files, sources, later?.habitatLakes, problems);
  const agency = readAgency(files, entries, problems);
  if (problems.length > 0 || found === undefined || habitatLakes === undefined)
    throw new AssumptionError(problems);
  const contents = {
    entries,
    expected,
    sources,
    plans,
    priceIndices,
    planningRates,
    groups,
    foundingEvidence: found.evidence,
    habitatLakes,
  };
  return {
    ...contents,
    agency,
    alterations: alterationsAtBuild(withoutAgency(files)) ?? alterationsOf(contents),
  };
}

/**
 * Those of the build were in order then, and are read when something needs them, which the first page of a server does not.
 * @throws AssumptionError, where others are wrong
 */
export function readWhenNeeded(files: AssumptionFiles, built?: ReadAtBuild): () => AssumptionSet {
  const assumptions = once(() => readAssumptions(files));
  if (!alterationsAtBuild(files, built)) assumptions();
  return assumptions;
}

const withoutAgency = (files: AssumptionFiles): AssumptionFiles =>
  new Map([...files].filter(([name]) => name !== agencyFile));
