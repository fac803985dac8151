import { spawn } from "node:child_process";
import { once } from "node:events";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join, relative } from "node:path";
import { z } from "zod";
import { projectRoot } from "#product/project-root.js";

/** One file's tests in one run. */
export interface FileRun {
  readonly file: string;
  readonly seconds: number;
  readonly passed: number;
  /** What failed, with the first line of why. */
  readonly failures: readonly string[];
}

const told = z.object({
  testResults: z.array(
    z.object({
      name: z.string(),
      startTime: z.number(),
      endTime: z.number(),
      status: z.string(),
      message: z.string(),
      assertionResults: z.array(
        z.object({ fullName: z.string(), status: z.string(), failureMessages: z.array(z.string()) }),
      ),
    }),
  ),
});

const vitest = join(dirname(createRequire(import.meta.url).resolve("vitest/package.json")), "vitest.mjs");

/** Runs test files once. @param results a file that the results may be written to */
export async function runTests(files: readonly string[], results: string): Promise<FileRun[]> {
  const how = ["--config", ".vitest.config.ts", "--reporter=json", `--outputFile=${results}`];
  const child = spawn(process.execPath, [vitest, "run", ...how, ...files], {
    cwd: projectRoot,
    stdio: ["ignore", "ignore", "inherit"],
  });
  await once(child, "close");
  return fileRuns(JSON.parse(readFileSync(results, "utf8")));
}

/** Results as Vitest writes them, file by file. A file that fails as a whole, when it is loaded or left, counts as one failure. */
export function fileRuns(results: unknown): FileRun[] {
  return told.parse(results).testResults.map((each) => {
    const { name, startTime, endTime, status, message, assertionResults } = each;
    const failures = assertionResults
      .filter((test) => test.status !== "passed")
      .map((test) => `${test.fullName}: ${firstLine(test.failureMessages[0] ?? test.status)}`);
    const isWhole = status !== "passed" && failures.length === 0;
    return {
      file: relative(projectRoot, name),
      seconds: (endTime - startTime) / 1000,
      passed: assertionResults.length - failures.length,
      failures: isWhole ? [`the file: ${firstLine(message)}`] : failures,
    };
  });
}

const firstLine = (text: string) => text.split("\n", 1)[0] ?? "";
