import { execFileSync } from "node:child_process";
import { getPriority } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { describe, expect, it } from "vitest";
import { projectRoot } from "../../src/report/document/assets.js";

const standBack = pathToFileURL(join(projectRoot, "dist", "odds", "stand-back.js")).href;
const script = (first: number) => `import { getPriority, setPriority } from "node:os";
import { standBack } from ${JSON.stringify(standBack)};
setPriority(Math.min(19, getPriority() + ${first}));
standBack(3);
console.log(getPriority());`;

/** Priority of a process that was `first` further back, once it stands back by 3. */
const priorityAfter = (first: number) =>
  Number(execFileSync(process.execPath, ["--input-type=module", "-e", script(first)]));

describe("a thread that stands back", () => {
  it("does so from the priority of its process, which need not be the usual one, and where threads have none not at all", () => {
    const own = getPriority();
    // setpriority(2): of a thread on Linux, of the whole process elsewhere; 19 is the lowest.
    const further = process.platform === "linux" ? 3 : 0;
    expect(priorityAfter(4)).toBe(Math.min(19, own + 4 + further));
    expect(priorityAfter(19)).toBe(19);
  });
});
