import { z } from "zod";
import { type Source, sourceSchema } from "./entry.js";
import { type AssumptionFiles, readYaml, shapeProblemAt, valueAt } from "./yaml-file.js";

export const sourcesFile = "sources.yaml";

/** In place of a citation that is told to be wrong, so that nothing that names it is blamed as well. */
const wrongSource: Source = { citation: "", read: "not read" };

/** The citations by their keys; what is wrong with them is added to `problems`. */
export function readSources(files: AssumptionFiles, problems: string[]): Map<string, Source> {
  const content = readYaml(files, sourcesFile, problems) ?? {};
  const parsed = z.record(z.string(), sourceSchema).safeParse(content);
  if (parsed.success) return new Map(Object.entries(parsed.data));
  problems.push(
    ...parsed.error.issues.map((issue) =>
      shapeProblemAt(`${sourcesFile}: ${issue.path.join(".")}`, valueAt(content, issue.path), issue),
    ),
  );
  return new Map(Object.keys(content).map((key) => [key, wrongSource]));
}
