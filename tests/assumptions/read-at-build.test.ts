import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import {
  AssumptionError,
  assumptionFiles,
  readAssumptions,
  readWhenNeeded,
} from "../../src/assumptions/load.js";
import {
  alterationsAtBuild,
  contentAtBuild,
  type ReadAtBuild,
  toReadAtBuild,
} from "../../src/assumptions/read-at-build.js";
import { assumptionsFolder } from "./real.js";

const files = assumptionFiles(assumptionsFolder);
const alterations = [{ what: "assumption of a test", found: "2", shipped: "1" }];
const kept = JSON.parse(JSON.stringify(toReadAtBuild(files, parse, alterations))) as ReadAtBuild;

describe("assumptions as read at the build", () => {
  it("hold what YAML reads, and nothing for a text that differs by a character", () => {
    for (const [file, text] of files) {
      expect(contentAtBuild(file, text, kept), file).toStrictEqual(parse(text));
      expect(contentAtBuild(file, `${text} `, kept), file).toBeUndefined();
    }
  });

  it("know what is altered in all of them together alone", () => {
    expect(alterationsAtBuild(files, kept)).toEqual(alterations);
    expect(alterationsAtBuild(new Map([...files, ["arrival.yaml", ""]]), kept)).toBeUndefined();
    expect(alterationsAtBuild(new Map([...files].slice(1)), kept)).toBeUndefined();
    expect(alterationsAtBuild(new Map([...files, ["more.yaml", "[]"]]), kept)).toBeUndefined();
  });

  it("know nothing of alterations where the record of what is shipped is another", () => {
    expect(alterationsAtBuild(files, { ...kept, record: "of another day" })).toBeUndefined();
  });

  it("are read when needed, and once; others at once, so that wrong ones end the start", () => {
    const wrong = new Map([...files, ["arrival.yaml", "[]"]]);
    const built = toReadAtBuild(wrong, parse, []);
    const assumptions = readWhenNeeded(wrong, built);
    expect(assumptions).toThrow(AssumptionError);
    expect(() => readWhenNeeded(wrong, kept)).toThrow(AssumptionError);
    const right = readWhenNeeded(files, kept);
    expect(right()).toBe(right());
  });

  it("are read anew where none were kept", () => {
    const none: ReadAtBuild = { ...kept, files: {} };
    expect(alterationsAtBuild(files, none)).toBeUndefined();
    expect(contentAtBuild("arrival.yaml", files.get("arrival.yaml") ?? "", none)).toBeUndefined();
    expect(readAssumptions(files).entries.size).toBeGreaterThan(0);
  });
});
