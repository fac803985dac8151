import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { readStudyFile } from "../../src/study/reading/read.js";
import { anyDay, counted, csv, study, summer } from "./counted-traffic.js";
import { absent, editedText, inputErrorOf, modelOf, problemsIn } from "./example.js";

describe("traffic made of counts", () => {
  it("is the same as the profile of which they are the dates", () => {
    const hours = Array.from({ length: 24 }, (_, hour) => (hour > 5 && hour < 20 ? (hour * 7) % 11 : 0));
    const lines = hours.flatMap((launches, hour) => [
      `2024-07-06,${hour},${2 * launches}`,
      `2024-07-08,${hour},${launches}`,
    ]);
    const made = {
      csv: ["date,hour,launches", ...lines].join("\n"),
      monthGroups: [summer],
      origin: "invented",
    };
    const share = { weekend: 2 / 7, weekday: 5 / 7 };
    const dayTypes = (["weekend", "weekday"] as const).map((kind) => ({
      id: `summer-${kind}`,
      name: `Jun–Aug, ${kind}`,
      days: { jun: 30 * share[kind], jul: 31 * share[kind], aug: 31 * share[kind] },
      launchesByHour: hours.map((launches) => (kind === "weekend" ? 2 * launches : launches)),
    }));
    const fromCounts = modelOf(study([["boats.traffic", made], ...anyDay])).boats.traffic;
    const fromProfile = modelOf(study([["boats.traffic", { dayTypes, origin: "invented" }], ...anyDay])).boats
      .traffic;
    expect(fromCounts?.sites).toEqual(fromProfile?.sites);
    for (const [index, dayType] of (fromCounts?.dayTypes ?? []).entries()) {
      const other = fromProfile?.dayTypes[index];
      expect(dayType.id).toBe(other?.id);
      expect(dayType.daysPerYear).toBeCloseTo(other?.daysPerYear ?? 0, 10);
      for (const [site, byHour] of dayType.launchesBySite.entries()) {
        for (const [hour, launches] of byHour.entries()) {
          expect(launches).toBeCloseTo(other?.launchesBySite[site]?.[hour] ?? -1, 10);
        }
      }
    }
  });

  it("is refused by line", () => {
    const wrong = { ...counted, csv: csv.replace("2024-07-08,8", "2024-07-08,24") };
    expect(problemsIn(editedText([["boats.traffic", wrong], ...anyDay]))).toMatchObject([
      { path: "boats.traffic.csv, line 3", found: 'hour "24"' },
    ]);
  });
});

describe("counts in a file beside the study", () => {
  let folder = "";
  const written = (traffic: object) => {
    const path = join(folder, "study.yaml");
    const edits = [["boats.traffic", traffic], ["options[full-season].station", absent], ...anyDay] as const;
    writeFileSync(path, editedText(edits));
    return path;
  };
  const named = (file: string) => ({ file, monthGroups: [summer], origin: "invented" });

  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), "traffic-"));
    writeFileSync(join(folder, "counts.csv"), csv);
  });
  afterAll(() => rmSync(folder, { recursive: true }));

  it("are read from there", () => {
    const { boats } = modelOf(readStudyFile(written(named("counts.csv"))));
    expect(boats.traffic?.dayTypes.map(({ id }) => id)).toEqual(["summer-weekend", "summer-weekday"]);
  });

  it("are refused where there is no such file, and in a study that is not read from disk", () => {
    expect(inputErrorOf(() => readStudyFile(written(named("other.csv")))).problems).toContainEqual(
      expect.objectContaining({ path: "boats.traffic.file", found: 'no file "other.csv"' }),
    );
    expect(problemsIn(editedText([["boats.traffic", named("counts.csv")]]))).toContainEqual(
      expect.objectContaining({
        path: "boats.traffic.file",
        allowed: expect.stringContaining("read from disk"),
      }),
    );
  });
});
