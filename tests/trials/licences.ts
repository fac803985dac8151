import { readFileSync } from "node:fs";
import { join } from "node:path";
import { z } from "zod";
import { projectRoot } from "#product/project-root.js";

const lockFile = z.object({
  packages: z.record(
    z.string(),
    z.object({
      version: z.string().optional(),
      license: z.string().optional(),
      dev: z.boolean().optional(),
      devOptional: z.boolean().optional(),
    }),
  ),
});

/** The lock file names no licence where a package states it in an old way or in words: its own file may. */
function licenceOf(folder: string, named: string | undefined): string {
  if (named !== undefined) return named;
  try {
    const own = z
      .object({ license: z.unknown(), licenses: z.unknown() })
      .partial()
      .parse(JSON.parse(readFileSync(join(projectRoot, folder, "package.json"), "utf8")));
    return JSON.stringify(own.license ?? own.licenses ?? "none stated");
  } catch {
    return "none stated";
  }
}

/** Every package that is installed, by licence; what serves development alone stands apart. */
const { packages } = lockFile.parse(JSON.parse(readFileSync(join(projectRoot, "package-lock.json"), "utf8")));
const installed = Object.entries(packages).filter(([folder]) => folder !== "");
for (const isForDevelopment of [false, true]) {
  const byLicence = new Map<string, string[]>();
  for (const [folder, { version = "", license, dev, devOptional }] of installed) {
    if ((dev ?? devOptional ?? false) !== isForDevelopment) continue;
    const licence = licenceOf(folder, license);
    const name = `${folder.replace(/^.*node_modules\//, "")} ${version}`;
    byLicence.set(licence, [...(byLicence.get(licence) ?? []), name]);
  }
  console.log(isForDevelopment ? "\nFor development alone" : "Installed with the program");
  for (const [licence, names] of [...byLicence].sort()) {
    console.log(`  ${licence} (${names.length}): ${names.sort().join(", ")}`);
  }
}
