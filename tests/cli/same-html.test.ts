import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, it } from "vitest";
import { examplesFolder, projectRoot } from "../../src/report/document/assets.js";

it("the same study gives the same HTML to the byte in another process, time zone and language", () => {
  const folder = mkdtempSync(join(tmpdir(), "same-html-"));
  try {
    const [first, second] = [
      { TZ: "Pacific/Kiritimati", LANG: "tr_TR.UTF-8", LC_ALL: "tr_TR.UTF-8" },
      { TZ: "America/Los_Angeles", LANG: "C", LC_ALL: "C" },
    ].map((environment) => {
      const out = join(folder, `${environment.LANG}.html`);
      const study = join(examplesFolder, "ninemoss.yaml");
      const command = join(projectRoot, "dist", "cli", "main.js");
      execFileSync(process.execPath, [command, "report", study, "--out", out], {
        env: { ...process.env, ...environment },
      });
      return readFileSync(out);
    });
    expect(first?.length).toBeGreaterThan(100_000);
    expect(Buffer.compare(first ?? Buffer.of(), second ?? Buffer.of(1))).toBe(0);
  } finally {
    rmSync(folder, { recursive: true });
  }
});
