import { describe, expect, it } from "vitest";
import { readStudyText } from "../../src/study/reading/read.js";
import { serving } from "./serving.js";

type Served = Awaited<ReturnType<typeof serving>>;

const page = async ({ ask }: Served, path: string) => (await ask(path)).text();

const send = ({ ask, studies }: Served, path: string, fields: Readonly<Record<string, string>>) => {
  const id = path.split("/")[2] ?? "";
  const revision = String(studies.find(id)?.revision);
  return ask(path, {
    method: "POST",
    body: new URLSearchParams({ "#base": revision, "#expected": revision, ...fields }),
  });
};

const studyIn = ({ studies }: Served, id: string) => {
  const entry = studies.find(id);
  if (!entry) throw new Error(`no study ${id}`);
  return readStudyText(entry.text, entry.fileName);
};

const mark = "This was Sorrel Bend Reservoir’s.";

describe("a copy of an example", () => {
  it("marks what was the example's until it is replaced, and a page that was taken over no more", async () => {
    const served = await serving();
    const { id } = served.studies.copy("example-sorrel-bend", "Ada");
    const path = `/studies/${id}/edit/lake`;
    const countIn = (html: string) => html.split(mark).length - 1;
    const before = countIn(await page(served, path));
    expect(before).toBeGreaterThan(5);
    await send(served, path, { "lake/thermoclineDepth": "31 ft" });
    expect(countIn(await page(served, path))).toBe(before - 1);
    await send(served, path, { act: "ours:lake" });
    expect(countIn(await page(served, path))).toBe(0);
    expect(countIn(await page(served, `/studies/${id}/edit/money`))).toBeGreaterThan(0);
  });

  it("is not marked where a person's own study is copied", async () => {
    const served = await serving();
    const { id } = served.studies.copy("example-sorrel-bend", "Ada");
    await send(served, `/studies/${id}/edit/names`, { "study/invented": "false" });
    const again = served.studies.copy(id, "Ada");
    expect(await page(served, `/studies/${again.id}/edit/lake`)).not.toContain(mark);
  });
});

describe("an unusual entry", () => {
  it("is confirmed once, and told again when the value changes", async () => {
    const served = await serving();
    const { id } = served.studies.copy("example-ninemoss", "Ada");
    const path = `/studies/${id}/edit/structures/0`;
    const bore = (value: string) => ({
      "structures/0/conduit/diameter": value,
      "structures/0/conduit/diameter#unit": "mm",
    });
    const button = 'value="confirm:structures/0/conduit/diameter"';
    await send(served, path, bore("100"));
    expect(await page(served, path)).toContain(button);
    await send(served, path, { act: "confirm:structures/0/conduit/diameter" });
    const confirmed = await page(served, path);
    expect(confirmed).not.toContain(button);
    expect(confirmed).toContain("Unusual, and confirmed: ");
    await send(served, path, bore("101"));
    expect(await page(served, path)).toContain(button);
  });
});

describe("who pays", () => {
  it("is named where a structure needs it, once for all who name it the same", async () => {
    const served = await serving();
    const { id } = served.studies.copy("example-ninemoss", "Ada");
    const count = studyIn(served, id).money.bearers.length;
    const path = `/studies/${id}/edit/structures/0`;
    await send(served, path, { "new:structures/0/bearer": "County Roads" });
    expect(studyIn(served, id).structures[0]?.bearer).toBe("county-roads");
    await send(served, `/studies/${id}/edit/structures/1`, { "new:structures/1/bearer": "County Roads" });
    const { structures, money } = studyIn(served, id);
    expect(structures[1]?.bearer).toBe("county-roads");
    expect(money.bearers.slice(count)).toEqual([{ id: "county-roads", name: "County Roads" }]);
  });
});

describe("typical values of a structure", () => {
  it.each(["intake", "hydropower", "dock", "ramp"])(
    "fill up a new %s, and are listed as typical",
    async (kind) => {
      const served = await serving();
      const { id } = served.studies.copy("example-ninemoss", "Ada");
      const index = studyIn(served, id).structures.length;
      await send(served, `/studies/${id}/edit/structures/new`, { name: "New one", kind, act: "typical" });
      const path = `/studies/${id}/edit/structures/${index}`;
      expect(await page(served, path)).toContain("Typical, not yours.");
      await send(served, path, { "new:x": "", [`new:structures/${index}/bearer`]: "Somebody" });
      const { study, structures } = studyIn(served, id);
      expect(structures[index]).toMatchObject({ kind, name: "New one", bearer: "somebody" });
      expect(Object.keys(study.typical ?? {}).some((place) => place.startsWith("structures/new-one/"))).toBe(
        true,
      );
    },
  );

  it("leave what was entered as it is", async () => {
    const served = await serving();
    const { id } = served.studies.copy("example-ninemoss", "Ada");
    const before = studyIn(served, id).structures;
    await send(served, `/studies/${id}/edit/structures/0`, { act: "typical:0" });
    expect(studyIn(served, id).structures).toEqual(before);
  });
});
