import { spawn } from "node:child_process";
import { once } from "node:events";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { describe, expect, it, vi } from "vitest";
import { projectRoot } from "../../src/project-root.js";
import { patience } from "../patience.js";
import { browserTests } from "./busy/browser-tests.js";
import { startLoops } from "./busy/loops.js";
import { fileRuns } from "./busy/runs.js";
import { runsTold, runTold } from "./busy/table.js";

function isAlive(pid: number): boolean {
  try {
    return process.kill(pid, 0);
  } catch {
    return false;
  }
}

describe("busy loops", () => {
  it("run until they are ended", async () => {
    const loops = startLoops(2);
    expect(loops.pids.map(isAlive)).toEqual([true, true]);
    await loops.end();
    expect(loops.pids.map(isAlive)).toEqual([false, false]);
  });

  it("end by themselves when the trial is killed", async () => {
    const module = pathToFileURL(join(projectRoot, "out", "trials", "busy", "loops.js")).href;
    const script = `import { startLoops } from ${JSON.stringify(module)};
      console.log(startLoops(1).pids[0]); setInterval(() => undefined, 1000);`;
    const trial = spawn(process.execPath, ["--input-type=module", "-e", script]);
    const [told] = await once(trial.stdout, "data");
    const loop = Number(String(told));
    expect(isAlive(loop)).toBe(true);
    trial.kill("SIGKILL");
    await vi.waitFor(() => expect(isAlive(loop)).toBe(false), { timeout: patience });
  });
});

describe("the trial of browser tests", () => {
  it("finds them by what they start, also where another file does it for them", () => {
    const found = browserTests();
    expect(found).toContain("tests/report/print/pdf.test.ts");
    expect(found).toContain("tests/web/browser/policy.test.ts");
    expect(found).not.toContain("tests/web/app.test.ts");
  });

  const file = (name: string, seconds: number, failed: readonly string[]) => ({
    ...{ name: join(projectRoot, "tests", name), startTime: 1000, endTime: 1000 * (1 + seconds) },
    ...{ status: failed.length > 0 ? "failed" : "passed", message: "" },
    assertionResults: ["one", ...failed].map((fullName) => ({
      ...{ fullName, status: fullName === "one" ? "passed" : "failed" },
      failureMessages: fullName === "one" ? [] : ["Error: gone\n    at place"],
    })),
  });

  it("tells of each file how often it failed, why, and how long it took", () => {
    const runs = [
      [file("a.test.ts", 3, []), file("b.test.ts", 1, [])],
      [file("a.test.ts", 5, ["two"]), file("b.test.ts", 2, [])],
      [file("a.test.ts", 4, []), { ...file("b.test.ts", 9, []), status: "failed", message: "no hook\n" }],
    ].map((testResults) => fileRuns({ testResults }));
    expect(runTold(2, runs[1] ?? [])).toBe("run 2: 2 passed, 1 failed; slowest tests/a.test.ts, 5.0 s");
    expect(runs.map((run) => run.flatMap(({ failures }) => failures))).toEqual([
      [],
      ["two: Error: gone"],
      ["the file: no hook"],
    ]);
    expect(runsTold(runs).map((line) => line.trim().split(/ {2,}/))).toEqual([
      ["file", "runs", "failed", "median s", "slowest s"],
      ["tests/a.test.ts", "3", "1", "4.0", "5.0"],
      ["tests/b.test.ts", "3", "1", "2.0", "9.0"],
    ]);
  });
});
