import { execFileSync } from "node:child_process";
import { getPriority } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { describe, expect, it } from "vitest";
import { projectRoot } from "../../src/report/assets.js";

const standBack = pathToFileURL(join(projectRoot, "dist", "odds", "stand-back.js")).href;
const script = `import { getPriority } from "node:os";
import { standBack } from ${JSON.stringify(standBack)};
standBack(3);
console.log(getPriority());`;

/** Priority of a process started `by` further back, once it stands back by 3. */
const priorityAfter = (by: number) =>
  Number(execFileSync("nice", ["-n", String(by), process.execPath, "--input-type=module", "-e", script]));

// setpriority(2): 19 is the lowest priority, and only who is privileged may raise one.
describe.runIf(process.platform === "linux")("a thread that stands back", () => {
  it("does so from the priority of its process, which need not be the usual one", () => {
    const own = getPriority();
    expect(priorityAfter(4)).toBe(Math.min(19, own + 7));
    expect(priorityAfter(19)).toBe(19);
  });
});
