import { readFileSync } from "node:fs";
import { strToU8, unzipSync, zipSync } from "fflate";
import { describe, expect, it, vi } from "vitest";
import { recordDigest } from "../../src/study/records/at-hand.js";
import { examplePath } from "../study/example.js";
import { csvOf, datesFrom } from "../study/records.js";
import { sendingFiles, uploadIn } from "./sending-files.js";
import { serving } from "./serving.js";

const days = datesFrom("2010-01-01", "2012-12-31");
const lines = days.map((day) => {
  const [year, month, date] = day.split("-").map(Number);
  return `${month}/${date}/${year}\t${day === "2011-02-03" ? "Ice" : "3200.25"}\tJ. Doe`;
});
const exported = `# an invented gauge\nRead on\tPool (ft)\tRead by\n${lines.join("\n")}\n`;
const mapping = { date: "Read on", level: "Pool (ft)", missing: "Ice", fillGapsUpTo: "2" };

const study = readFileSync(examplePath("thistledown"), "utf8");

async function withStudy() {
  const page = await sendingFiles(study, "records", "gauge.txt");
  type Sent = Parameters<typeof page.send>;
  const send = (fields: Readonly<Record<string, string>>, file?: Sent[1], name?: Sent[2]) =>
    page.send(Object.entries(fields), file, name);
  const keep = async (fields: Readonly<Record<string, string>>, file: string) => {
    const upload = uploadIn(await (await send(fields, file)).text());
    return send({ ...fields, upload, act: "keep" });
  };
  return { ...page, send, keep };
}

describe("the page of records", () => {
  it("offers the columns of a first file, likely ones chosen, and asks what it cannot know", async () => {
    const { send, ask, id } = await withStudy();
    expect(await (await ask(`/studies/${id}/records`)).text()).toContain("For a first file leave both empty");
    const page = await (await send({}, exported)).text();
    expect(page).toContain('<option value="Read on" selected>Read on: 1/1/2010');
    expect(page).toContain('<option value="Pool (ft)" selected>');
    const asked = await (await send({ ...mapping, missing: "", upload: uploadIn(page) })).text();
    expect(asked).toContain("found &quot;Ice&quot; in 1 line, the first in line 401");
    expect(asked).not.toContain('value="keep"');
  });

  it("shows how a file is read, drops other columns, and keeps the record beside the study", async () => {
    const { send, ask, id, studies } = await withStudy();
    const page = await (await send(mapping, exported)).text();
    expect(page).toContain("Dates have the month first, as 1/13/2010 in line 15.");
    expect(page).toContain("3 years can be used: 2010 to 2012.");
    expect(page).toContain("Dropped and not kept: Read by.");
    expect(studies.find(id)?.revision).toBe(1);
    const kept = await send({ ...mapping, upload: uploadIn(page), act: "keep" });
    expect(kept.status).toBe(303);
    const { text = "", revision, note } = studies.find(id) ?? {};
    expect([revision, note]).toEqual([2, "Record of levels from gauge.txt"]);
    expect(text).toMatch(/^ {4}kept: [0-9a-f]{64}$/m);
    expect(text).not.toMatch(/2010-01-02|Doe|drawdown/);
    const after = await (await ask(`/studies/${id}/records`)).text();
    expect(after).toContain("The record was read from gauge.txt");
    expect(after).toContain('value="Pool (ft)"');
    expect((await ask(`/studies/${id}`)).status).toBe(200);
  });

  it("keeps nothing that has not been shown: another answer or file is shown first", async () => {
    const { send, id, studies } = await withStudy();
    const unseen = await (await send({ ...mapping, act: "keep" }, exported)).text();
    expect(unseen).toContain("Not kept yet");
    const upload = uploadIn(unseen);
    const other = { ...mapping, fillGapsUpTo: "0", upload, act: "keep" };
    const changed = await (await send(other)).text();
    expect(changed).toContain("The file or an answer has changed since it was last shown.");
    expect(changed).toContain("2 years can be used: 2010, 2012.");
    expect(studies.find(id)?.revision).toBe(1);
    expect((await send({ ...other, origin: "The gauge" })).status).toBe(303);
    expect(studies.find(id)?.text).toContain("origin: The gauge");
  });

  it("goes with the study into a zip, which another server takes", async () => {
    const { keep, ask, id, studies } = await withStudy();
    await keep(mapping, exported);
    const zip = new Uint8Array(await (await ask(`/studies/${id}/study.zip`)).arrayBuffer());
    const names = Object.keys(unzipSync(zip));
    expect(names).toEqual([`${id}.yaml`, expect.stringMatching(/^records\/[0-9a-f]{64}\.csv$/)]);
    const other = await serving();
    const form = new FormData();
    form.set("study", new Blob([zip]), "lake.zip");
    const taken = await other.ask("/studies", { method: "POST", body: form });
    expect(taken.status).toBe(303);
    const found = other.studies.find(taken.headers.get("location")?.split("/").at(-1) ?? "");
    expect(found?.text).toBe(studies.find(id)?.text);
  });

  it("tells faults of the file though the study has hardly begun", async () => {
    const { send, studies, ask } = await withStudy();
    const { id } = studies.create("study: { units: us }\n", { author: "", note: "", origin: "form" });
    const form = new FormData();
    for (const [key, value] of Object.entries(mapping)) form.set(key, value);
    form.set("file", new Blob([exported.replace("2/28/2010", "2/30/2010")]), "gauge.txt");
    const page = await (await ask(`/studies/${id}/records`, { method: "POST", body: form })).text();
    expect(page).toContain("Line 61: found &quot;2/30/2010&quot;; allowed: a day that the month has.");
    expect(page).toContain("Keep the record without the 1 line");
    expect((await send({}, "")).status).toBe(400);
  });

  it.each([
    [
      "a file in another encoding",
      Buffer.from([0x64, 0x0a, 0xfc, 0x0a]),
      "line 2: found bytes in another encoding",
    ],
    ["no file", undefined, "found no file; allowed: an exported file"],
    [
      "a level beyond what the lake can have",
      exported.replace("3200.25", "9200.25"),
      "no farther above full pool",
    ],
    [
      "a file without the mapped column",
      exported.replace("Pool (ft)", "Stage (ft)"),
      "no column &quot;Pool (ft)&quot;; there are Read on, Stage (ft), Read by",
    ],
  ])("refuses %s by place, found, allowed and remedy", async (_what, file, told) => {
    const { send, studies, id } = await withStudy();
    const page = await (await send({ ...mapping, act: "keep" }, file)).text();
    expect(page).toContain(told);
    expect(studies.find(id)?.revision).toBe(1);
  });

  it.each([
    [
      { schedule: "gone" },
      "Levels of: found “gone”, which this study does not have; allowed: those in the list",
    ],
    [{ gaugeZero: "low" }, "Elevation of the gauge’s zero: found &quot;low&quot;; allowed: a number"],
    [{ fillGapsUpTo: "two" }, "Gaps to join: found &quot;two&quot;; allowed: whole days, 0 to 92"],
    [{ fillGapsUpTo: "400" }, "Gaps to join: found &quot;400&quot;; allowed: whole days, 0 to 92"],
    [{ origin: "o".repeat(201) }, "Where the record comes from: found"],
    [{ origin: "a\u0007b" }, "allowed: characters that can be printed"],
  ])("keeps nothing of a form with %j, and gives back what was typed and the file", async (typed, told) => {
    const { send, studies, id } = await withStudy();
    const answer = await send({ ...mapping, ...typed, act: "keep" }, exported);
    const page = await answer.text();
    expect(answer.status).toBe(400);
    expect(page).toContain(told);
    expect(page).toContain('value="Pool (ft)"');
    expect(uploadIn(page)).toMatch(/^[0-9a-f-]{36}$/);
    expect(studies.find(id)?.revision).toBe(1);
  });

  it("takes a gauge’s zero with commas, and a file whose name is not in Latin letters alone", async () => {
    const { send, studies, id } = await withStudy();
    const fields = { ...mapping, gaugeZero: "3,190" };
    const low = exported.replaceAll("3200.25", "10.25");
    const upload = uploadIn(await (await send(fields, low, "Höhe – Łąka.csv")).text());
    const kept = await send({ ...fields, upload, act: "keep" });
    expect(kept.status).toBe(303);
    expect(studies.find(id)?.note).toBe("Record of levels from Höhe – Łąka.csv");
    expect(studies.find(id)?.text).toContain("gaugeZero: 3190");
  });

  it("shows what is left out of another file before it keeps the rest", async () => {
    const { send, studies, id } = await withStudy();
    const faulty = exported.replace("2/28/2010", "2/30/2010");
    const page = await (await send({ ...mapping, act: "keep" }, faulty)).text();
    expect(page).toContain("1 line left out");
    expect(studies.find(id)?.revision).toBe(1);
    expect((await send({ ...mapping, upload: uploadIn(page), act: "keep" })).status).toBe(303);
    expect(studies.find(id)?.note).toBe("Record of levels from gauge.txt, without 1 of its lines");
  });

  it("tells its own limit of a file that is too large", async () => {
    const { send } = await withStudy();
    const page = await (await send(mapping, new Uint8Array(48 * 1024 * 1024 + 1).fill(65))).text();
    expect(page).toContain("found a larger file; allowed: at most 48 MB");
  });

  it("takes a record for another schedule", async () => {
    const { studies, ask } = await withStudy();
    const text = readFileSync(examplePath("sorrel-bend"), "utf8");
    const { id } = studies.create(text, { author: "", note: "", origin: "upload" });
    const [, schedule = ""] = /otherSchedules:\s*\n\s*- id: (\S+)/.exec(text) ?? [];
    const form = new FormData();
    const csv = csvOf(days, () => "2100.5", "day,stage (ft)");
    for (const [key, value] of Object.entries({ date: "day", level: "stage (ft)", schedule }))
      form.set(key, value);
    form.set("file", new Blob([csv]), "plan.csv");
    const read = await ask(`/studies/${id}/records`, { method: "POST", body: form });
    form.delete("file");
    form.set("upload", uploadIn(await read.text()));
    form.set("act", "keep");
    expect((await ask(`/studies/${id}/records`, { method: "POST", body: form })).status).toBe(303);
    expect(
      studies.document(studies.find(id) ?? { text: "", fileName: "" }).lake.otherSchedules[0]?.record?.name,
    ).toBe("plan.csv");
  });
});

describe("the form of levels of a study with a kept record", () => {
  it("keeps the record while something else is changed", async () => {
    const { keep, ask, id, studies } = await withStudy();
    await keep(mapping, exported);
    const before = studies.find(id)?.text ?? "";
    const page = await (await ask(`/studies/${id}/edit/levels`)).text();
    expect(page).not.toContain("2010-01-02");
    const change = { "#author": "", "#base": "2", "#expected": "2", "lake/record/csv": "" };
    const body = new URLSearchParams({ ...change, "lake/record/origin": "The gauge at the dam" });
    expect((await ask(`/studies/${id}/edit/levels`, { method: "POST", body })).status).toBe(303);
    const { text = "", revision } = studies.find(id) ?? {};
    expect(revision).toBe(3);
    expect(text).toContain("origin: The gauge at the dam");
    const kept = /kept: [0-9a-f]{64}/;
    expect(kept.exec(text)?.[0]).toBe(kept.exec(before)?.[0] ?? "none");
  });

  it("takes no record out of a zip that its study does not name", async () => {
    const { keep, ask, id } = await withStudy();
    await keep(mapping, exported);
    const zip = unzipSync(new Uint8Array(await (await ask(`/studies/${id}/study.zip`)).arrayBuffer()));
    const stranger = "date,elevation (ft)\n2010-01-01,3200\n";
    const more = { ...zip, [`records/${recordDigest(stranger)}.csv`]: strToU8(stranger) };
    const other = await serving();
    const taken = vi.spyOn(other.studies, "keepRecord");
    const form = new FormData();
    form.set("study", new Blob([new Uint8Array(zipSync(more))]), "lake.zip");
    expect((await other.ask("/studies", { method: "POST", body: form })).status).toBe(303);
    const named = Object.keys(zip).flatMap((name) => /[0-9a-f]{64}/.exec(name)?.[0] ?? []);
    expect(taken.mock.results.map(({ value }) => value)).toEqual(named);
    taken.mockRestore();
  });
});
