import { median } from "../median.js";
import type { FileRun } from "./runs.js";

/** For each file how often it ran and failed, and how long it took. */
export function runsTold(runs: readonly (readonly FileRun[])[]): string[] {
  const all = runs.flat();
  const files = [...new Set(all.map(({ file }) => file))].sort();
  const width = Math.max(...files.map(({ length }) => length), "file".length);
  const line = (name: string, ...cells: readonly (string | number)[]) =>
    [name.padEnd(width), ...cells.map((cell) => String(cell).padStart(11))].join("");
  return [
    line("file", "runs", "failed", "median s", "slowest s"),
    ...files.map((file) => {
      const own = all.filter((each) => each.file === file);
      const seconds = own.map((each) => each.seconds);
      const failed = own.filter(({ failures }) => failures.length > 0).length;
      return line(file, own.length, failed, median(seconds).toFixed(1), Math.max(...seconds).toFixed(1));
    }),
  ];
}

/** One run: "run 3: 107 passed, 0 failed; slowest tests/report/print/pdf.test.ts, 24.7 s". */
export function runTold(number: number, run: readonly FileRun[]): string {
  const passed = run.reduce((sum, each) => sum + each.passed, 0);
  const failed = run.reduce((sum, each) => sum + each.failures.length, 0);
  const [slowest] = [...run].sort((left, right) => right.seconds - left.seconds);
  const longest = slowest ? `; slowest ${slowest.file}, ${slowest.seconds.toFixed(1)} s` : "";
  return `run ${number}: ${passed} passed, ${failed} failed${longest}`;
}
