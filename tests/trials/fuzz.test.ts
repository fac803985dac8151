import { describe, expect, it } from "vitest";
import { assumptions } from "../report/runs.js";
import { type Hunt, hunt } from "./fuzz/hunt.js";
import { longHunt } from "./fuzz/long-hunt.js";
import { pdfHunt } from "./fuzz/pdf-hunt.js";
import { requestHunt } from "./fuzz/request-hunt.js";
import { shortHunt } from "./fuzz/short-hunt.js";
import { recordHunt, studyHunt } from "./fuzz/study-hunt.js";
import { sweepHunt } from "./fuzz/sweep-hunt.js";
import { tableHunt } from "./fuzz/tables.js";

const seed = 20261125;

async function hunted<Case>(each: Hunt<Case>, count: number) {
  const { found, endings } = await hunt(each, { seed, count });
  return { found: found.map(({ fault, value }) => ({ fault, value })), endings };
}

describe("bad input never crashes, hangs or slips into a result", () => {
  it("as a study file: figures come out, or problems that name their places", async () => {
    const { found, endings } = await hunted(studyHunt(assumptions), 60);
    expect(found).toEqual([]);
    expect([...endings.keys()].sort()).toEqual(["computed", "refused"]);
  });

  it("as a record of levels, boats or seasons", async () => {
    const { found, endings } = await hunted(recordHunt(assumptions), 40);
    expect(found).toEqual([]);
    expect([...endings.keys()].sort()).toEqual(["computed", "refused"]);
  });

  it("as a pasted table of structures", async () => {
    expect((await hunted(tableHunt(), 60)).found).toEqual([]);
  });

  it("as a short study", async () => {
    const { found, endings } = await hunted(shortHunt(assumptions), 40);
    expect(found).toEqual([]);
    for (const ending of ["computed", "refused"]) expect([...endings.keys()]).toContain(ending);
  });

  it("as values of a sweep", async () => {
    const { found, endings } = await hunted(sweepHunt(assumptions), 40);
    expect(found).toEqual([]);
    for (const ending of ["computed", "refused"]) expect([...endings.keys()]).toContain(ending);
  });

  it("as a text of 200,000 characters in a place of a study", async () => {
    expect((await hunted(longHunt(assumptions), 20)).found).toEqual([]);
  });

  it("as an issued report with some of its bytes changed", async () => {
    const { found, endings } = await hunted(await pdfHunt(), 40);
    expect(found).toEqual([]);
    expect(endings.size).toBeGreaterThan(1);
  });

  it("as an address, a form or a body sent to the server", async () => {
    const { found, endings } = await hunted(requestHunt(), 80);
    expect(found).toEqual([]);
    for (const status of ["200", "303", "400", "404"]) expect([...endings.keys()]).toContain(status);
  });
});
