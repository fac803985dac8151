import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { z } from "zod";
import { type AgencySet, agencyFile } from "./agency.js";
import { retired } from "./retired.js";
import { type AssumptionFiles, readYaml } from "./yaml-file.js";

const line = z.string("a text").trim().min(1, "a text").max(200, "at most 200 characters");

/** Where there is no group of fields, or one with another key. */
const keysOnly = (keys: string) => ({
  error: ({ code }: { readonly code?: string | undefined }) =>
    code === "invalid_type" || code === "unrecognized_keys" ? keys : undefined,
});

const agencySchema = z.strictObject(
  {
    name: line,
    version: z.union([line, z.number()], "a text or a number").transform(String),
    values: z.array(
      z.strictObject(
        {
          id: z.string("an id").min(1, "an id"),
          value: z.union([z.string(), z.number()], "a value with its unit, or a number"),
          reason: line,
        },
        keysOnly("id, value and reason"),
      ),
      "a list of values, each with id, value and reason",
    ),
  },
  keysOnly("name, version and values"),
);

/** The files with the agency's set, where the folder of the studies has one. */
export function withAgencyFile(files: AssumptionFiles, folder: string): AssumptionFiles {
  const path = join(folder, agencyFile);
  return existsSync(path) ? new Map([...files, [agencyFile, readFileSync(path, "utf8")]]) : files;
}

/** Reads the agency's set, if there is one, and adds what is wrong with it to `problems`. */
export function readAgency(
  files: AssumptionFiles,
  entries: ReadonlyMap<string, unknown>,
  problems: string[],
): AgencySet | undefined {
  if (!files.has(agencyFile)) return undefined;
  const written = readYaml(files, agencyFile, problems);
  const parsed = agencySchema.safeParse(written);
  if (!parsed.success) {
    problems.push(
      ...parsed.error.issues.map((issue) => {
        const place =
          issue.code === "unrecognized_keys" ? [...issue.path, ...issue.keys.slice(0, 1)] : issue.path;
        return `${[agencyFile, ...place].map(String).join(", ")}: found ${foundAt(written, place)}; allowed: ${issue.message}. Correct it.`;
      }),
    );
    return undefined;
  }
  const ids = parsed.data.values.map(({ id }) => id);
  problems.push(...ids.flatMap((id, index) => idProblems(id, ids.indexOf(id) < index, entries)));
  return parsed.data;
}

function foundAt(written: unknown, path: readonly PropertyKey[]): string {
  const found = path.reduce<unknown>((inner, key) => Reflect.get(Object(inner), key), written);
  return found === undefined || found === null ? "nothing" : JSON.stringify(found).slice(0, 60);
}

function idProblems(id: string, isRepeated: boolean, entries: ReadonlyMap<string, unknown>): string[] {
  if (isRepeated) return [`${agencyFile}: ${id} stands there twice. Keep one of the two.`];
  if (entries.has(id)) return [];
  const now = retired.get(id)?.now;
  const allowed = now === undefined ? "an id from the assumptions" : `${now}, which is read in its place`;
  return [`${agencyFile}: found ${JSON.stringify(id)}; allowed: ${allowed}. Correct it or take it out.`];
}
