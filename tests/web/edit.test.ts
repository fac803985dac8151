import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { serving } from "./serving.js";

const form = (fields: Record<string, string>, headers: Record<string, string> = {}): RequestInit => ({
  method: "POST",
  headers,
  body: new URLSearchParams({ "#author": "Ada", ...fields }),
});
const at = (base: number, fields: Record<string, string>) =>
  form({ "#base": String(base), "#expected": String(base), ...fields });

describe("a form sent without a script", () => {
  it("saves what differs as one revision, with its author and what was changed", async () => {
    const { studies, ask } = await serving();
    const { id } = studies.copy("example-ninemoss", "Ada");
    const page = `/studies/${id}/edit/lake`;
    const change = {
      "lake/thermoclineDepth": "7",
      "lake/thermoclineDepth#unit": "m",
      "lake/chemistry/ph": "7.1",
    };
    const response = await ask(page, at(1, change));
    expect([response.status, response.headers.get("location")]).toEqual([303, page]);
    const kept = studies.find(id);
    expect(kept).toMatchObject({
      revision: 2,
      author: "Ada",
      note: "Lake and water: Chemistry, pH; Thermocline depth",
    });
    expect(kept?.text).toContain("thermoclineDepth: 7 m");
    expect((await ask(page, at(2, change))).status).toBe(303);
    expect(studies.find(id)?.revision).toBe(2);
  });

  it("takes a gauge record in place of a schedule, and has the schedule again after other saves", async () => {
    const { studies, ask } = await serving();
    const { id, text } = studies.copy("example-sorrel-bend", "Ada");
    const page = `/studies/${id}/edit/levels`;
    const before = await (await ask(page)).text();
    expect(before).toContain('name="way:lake/drawdown"');
    expect(before).not.toContain('name="lake/record/csv"');
    await ask(page, at(1, { "way:lake/drawdown": "1" }));
    const chosen = await (await ask(page)).text();
    expect(chosen).toContain('name="lake/record/csv"');
    expect(chosen).not.toContain("not both");
    await ask(
      page,
      at(2, { "lake/record/csv": "date,elevation (ft)\n1998-01-01,1841", "lake/record/origin": "gauge" }),
    );
    expect(studies.find(id)?.text).toContain("1998-01-01,1841");
    await ask(page, at(3, { "way:lake/drawdown": "0" }));
    const { lake } = parse(studies.find(id)?.text ?? "");
    expect(lake.drawdown).toEqual(parse(text).lake.drawdown);
    expect(lake.record).toBeUndefined();
    await ask(page, at(4, { "way:lake/drawdown": "1" }));
    expect(parse(studies.find(id)?.text ?? "").lake.record).toMatchObject({ origin: "gauge" });
  });

  it("has again what was typed in the form in which another way was chosen", async () => {
    const { studies, ask } = await serving();
    const { id } = studies.copy("example-sorrel-bend", "Ada");
    const page = `/studies/${id}/edit/levels`;
    await ask(page, at(1, { "way:lake/drawdown": "1" }));
    const typed = { "lake/record/csv": "date,elevation (ft)\n1998-01-02,1841" };
    await ask(page, at(2, { ...typed, "way:lake/drawdown": "0" }));
    expect(parse(studies.find(id)?.text ?? "").lake.record).toBeUndefined();
    await ask(page, at(4, { "way:lake/drawdown": "1" }));
    expect(studies.find(id)?.text).toContain("1998-01-02,1841");
  });

  it("converts a number that stays while another unit is chosen, and takes one that is typed in it", async () => {
    const { studies, ask } = await serving();
    const { id } = studies.copy("example-ninemoss", "Ada");
    const page = `/studies/${id}/edit/lake`;
    await ask(page, at(1, { "lake/thermoclineDepth": "7", "lake/thermoclineDepth#unit": "m" }));
    const json = { Accept: "application/json" };
    const send = async (base: number, amount: string, unit: string) => {
      const fields = { "lake/thermoclineDepth": amount, "lake/thermoclineDepth#unit": unit };
      const response = await ask(page, { ...at(base, fields), headers: json });
      return response.json();
    };
    // 7 m are 22.9659 ft.
    expect(await send(2, "7", "ft")).toMatchObject({
      written: [{ id: "f-lake-thermoclineDepth", value: "22.9658793", unit: "ft" }],
      converted: [{ text: "Thermocline depth: 7 m became 22.9658793 ft.", typed: "7", unit: "ft" }],
    });
    expect(await send(3, "7", "ft")).toMatchObject({ written: [], converted: [] });
    expect(studies.find(id)?.text).toContain("thermoclineDepth: 7 ft");
    await send(4, "7", "");
    expect(studies.find(id)?.text).toContain("thermoclineDepth: 7 ft");
    await send(4, "8", "");
    expect(studies.find(id)?.text).toContain("thermoclineDepth: 8 ft");
  });

  it("takes the day of the year as offices write it, and shows it as the study has it", async () => {
    const { studies, ask } = await serving();
    const { id } = studies.copy("example-sorrel-bend", "Ada");
    const sent = {
      ...at(1, { "lake/drawdown/0/on": "October 15" }),
      headers: { Accept: "application/json" },
    };
    const answer = await (await ask(`/studies/${id}/edit/levels`, sent)).json();
    expect(answer.written).toMatchObject([{ id: "f-lake-drawdown-0-on", value: "10-15" }]);
  });

  it("that comes second gets a page with both values, and its choice is saved on top", async () => {
    const { studies, ask } = await serving();
    const { id } = studies.copy("example-ninemoss", "Ada");
    const page = `/studies/${id}/edit/lake`;
    await ask(page, at(1, { "lake/thermoclineDepth": "7 m" }));
    const mine = { "lake/thermoclineDepth": "9 m", "lake/chemistry/ph": "7.1" };
    const refused = await ask(page, at(1, mine));
    expect(refused.status).toBe(409);
    const told = await refused.text();
    for (const shown of ["Ada saved revision 2", "7 m", "9 m", 'value="7.1"']) expect(told).toContain(shown);
    expect(studies.find(id)?.revision).toBe(2);
    const choice = { ...mine, "choice:lake/thermoclineDepth": "theirs" };
    await ask(page, form({ "#base": "1", "#expected": "2", ...choice }));
    expect(studies.find(id)?.text).toContain("thermoclineDepth: 7 m");
    expect(studies.find(id)?.text).toContain("ph: 7.1");
  });

  it("ticks and clears boxes: what is before each box says that it was shown", async () => {
    const { studies, ask } = await serving();
    const { id } = studies.copy("example-ninemoss", "Ada");
    const page = `/studies/${id}/edit/printed`;
    const send = (base: number, boxes: readonly (readonly [string, string])[]) => {
      const head = [["#base", String(base)] as const, ["#expected", String(base)] as const];
      const named = boxes.map(([section, sent]) => [`report/leaveOut#${section}`, sent] as const);
      const body = new URLSearchParams([...head, ...named].map(([name, value]) => [name, value]));
      return ask(page, { method: "POST", body });
    };
    await send(1, [
      ["plans", ""],
      ["plans", "yes"],
      ["money", ""],
      ["money", "yes"],
    ]);
    expect(studies.find(id)?.text).toMatch(/leaveOut:\s+- plans\s+- money\n/);
    await send(2, [
      ["plans", ""],
      ["money", ""],
      ["money", "yes"],
    ]);
    expect(studies.find(id)?.text).toMatch(/leaveOut:\s+- money\n/);
    expect(await (await ask(page)).text()).toContain('name="report/leaveOut#money" value="yes" checked');
  });

  it("tells the author of a section that went to the method document", async () => {
    const { studies, ask } = await serving();
    const about = { author: "Ada", note: "", origin: "upload" } as const;
    const example = studies.find("example-ninemoss")?.text ?? "";
    const { id } = studies.create(`${example}\nreport: { leaveOut: [worked] }\n`, about, "own.yaml");
    const page = await (await ask(`/studies/${id}/edit/printed`)).text();
    expect(page).toContain("Worked by hand (in the method document now)");
    expect(page).toContain("which is in the method document now; usually a section that reports have.");
  });

  it("changes no example, and no page that is not there", async () => {
    const { studies, ask } = await serving();
    const { id } = studies.copy("example-ninemoss", "Ada");
    expect((await ask("/studies/example-ninemoss/edit/lake", at(1, { "lake/name": "X" }))).status).toBe(404);
    for (const path of [
      "edit/nothing",
      "edit/structures/99",
      "edit/lake/0",
      "structures/template/boat.csv",
    ]) {
      expect((await ask(`/studies/${id}/${path}`)).status).toBe(404);
    }
    const refused = await ask(`/studies/${id}/edit/lake`, form({ "lake/name": "X" }));
    expect(refused.status).toBe(400);
    const told = await refused.text();
    expect(told).toContain("Go back in your browser, where what you entered still stands");
    expect(told).not.toContain("upload");
  });
});

describe("a study that is not finished", () => {
  it("is kept, says what is missing, and has no results yet", async () => {
    const { studies, ask } = await serving();
    const made = await ask(
      "/studies/new",
      form({ name: "Blue", lake: "Blue", units: "si", currency: "eur" }),
    );
    expect(made.headers.get("location")).toBe("/studies/blue/edit/names");
    expect(studies.find("blue")?.text).toContain("currency: EUR");
    const told = await (await ask("/studies/blue")).text();
    expect(told).toContain('Structures</a> <span class="note">not begun');
    expect(told).toContain(
      "Needed: at least one program or schedule of levels beside the option that does nothing",
    );
    expect(told).not.toMatch(/list of \d/);
    expect((await ask("/studies/blue/report.pdf")).status).toBe(409);
    expect(await (await ask("/")).text()).toContain("Not finished. Names and purpose: 4 missing");
  });

  it("in a file is refused with its places, and kept where its owner wants it so", async () => {
    const { studies, ask } = await serving();
    const text = "study:\r\n  name: Half # to be done\n";
    const bytes = Buffer.from(text).toString("base64");
    const body = new FormData();
    body.set("study", new Blob([text]), "half.yaml");
    const refused = await ask("/studies", { method: "POST", body });
    expect(refused.status).toBe(400);
    expect((await refused.text()).replaceAll("&#x3D;", "=")).toContain(`name="bytes" value="${bytes}"`);
    await ask("/studies/unfinished", form({ bytes, fileName: "half.yaml" }));
    expect(studies.find("half")?.text).toBe(text);
  });

  it("is not made from a form that lacks its names, and what was typed stays", async () => {
    const { ask } = await serving();
    const response = await ask(
      "/studies/new",
      form({ name: "", lake: "Blue", units: "si", currency: "EURO" }),
    );
    expect(response.status).toBe(400);
    const page = await response.text();
    expect(page).toContain("three letters");
    expect(page).toContain('value="Blue"');
  });
});

describe("an entry that is unusual", () => {
  it("is told beside its field, as no error, and the balance stands", async () => {
    const { studies, ask } = await serving();
    const { id } = studies.copy("example-ninemoss", "Ada");
    const page = `/studies/${id}/edit/structures/0`;
    await ask(
      page,
      at(1, { "structures/0/conduit/diameter": "100", "structures/0/conduit/diameter#unit": "mm" }),
    );
    const told = await (await ask(page)).text();
    expect(told).toMatch(
      /class="needed" id="f-structures-0-conduit-diameter-error">Unusual: Village water intake, conduit: velocity when clean[^<]*3\.57 m\/s; usually 0\.1 m\/s to 3 m\/s\. Look again/,
    );
    expect(told).toContain("Unusual here: worth a second look");
    expect(told).toContain("Avoided per spent");
    expect(told).not.toContain('aria-invalid="true"');
    expect(await (await ask(`/studies/${id}/edit/structures`)).text()).toContain("1 unusual");
  });
});
