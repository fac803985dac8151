import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { readStudyText } from "../../src/study/reading/read.js";
import { examplePath } from "../study/example.js";
import { type Fields, sendingFiles, uploadIn } from "./sending-files.js";

/** The example without its clean years of 2025 and 2026. */
const study = readFileSync(examplePath("sorrel-bend"), "utf8").replace(/^ +- \{ from: 2025,.*\n/m, "");
const withStudy = (page: string) => sendingFiles(study, `records/${page}`, "file.csv");

const words = (about: string, meanings: Readonly<Record<string, string>>): Fields =>
  Object.entries(meanings).flatMap(([word, meaning]) => [
    ...[["about", about] as const, ["word", word] as const, ["meaning", meaning] as const],
  ]);

describe("the page of samples", () => {
  const { startYear } = readStudyText(study, "a.yaml").money;
  const lines = Array.from(
    { length: 30 },
    (_, index) => `${startYear - 1}-07-${10 + (index % 20)};J. Doe;clear`,
  );
  const file = `Taken;By;Result\n${lines.join("\n")}\n`;
  const columns: Fields = [
    ...[["columns[date]", "Taken"] as const, ["columns[result]", "Result"] as const],
    ["set[all]", "planktonTows"],
  ];

  it("offers columns, asks for words, shows counts and keeps clean years without names", async () => {
    const { send, studies, id, ask } = await withStudy("samples");
    const first = await (await send([], file)).text();
    expect(first).toContain('<option value="Taken" selected>');
    const asked = await (await send([...columns, ["upload", uploadIn(first)]])).text();
    expect(asked).toContain("The result that “clear” means");
    const answers: Fields = [
      ...columns,
      ...words("results", { clear: "none" }),
      ["set[watching][]", "full-season"],
    ];
    const page = await (await send(answers, file)).text();
    expect(page).toContain(`1 clean year: ${startYear - 1}.`);
    expect(page).toContain("Dropped and not kept: By.");
    expect(page).toMatch(
      new RegExp(`<td>${startYear - 1}</td><td class="num">–</td><td class="num">30</td>`),
    );
    expect(page).not.toContain("Doe");
    expect((await send([...answers, ["upload", uploadIn(page)], ["act", "keep"]])).status).toBe(303);
    const { text = "", note } = studies.find(id) ?? {};
    expect(note).toBe("Samples from file.csv");
    expect(text).toContain("30 plankton tows in file.csv, none with mussels");
    expect(text).not.toContain("Doe");
    const after = await (await ask(`/studies/${id}/records/samples`)).text();
    expect(after).toContain('name="columns[result]" value="Result"');
    expect(after).toContain('<option value="planktonTows" selected>');
  });

  it("remembers the columns of a file that gives no clean year", async () => {
    const { send, studies, id } = await withStudy("samples");
    const answers: Fields = [...columns, ...words("results", { clear: "mussels" })];
    const page = await (await send(answers, file)).text();
    expect(page).toContain("so that no year is clean");
    await send([...answers, ["upload", uploadIn(page)], ["act", "keep"]]);
    const { boats } = readStudyText(studies.find(id)?.text ?? "", "a.yaml");
    expect(boats.samples).toMatchObject({
      export: { date: "Taken", all: "planktonTows" },
      origin: "File file.csv",
    });
  });
});

describe("the page of work orders", () => {
  const file =
    "Closed,Asset,Type,By,Hours\n2025-05-01,Fire,Basket,J. Doe,2\n2025-05-02,Fire,Basket,J. Doe,4\n";
  const columns: Fields = Object.entries({
    date: "Closed",
    structure: "Asset",
    work: "Type",
    hours: "Hours",
  }).map(([key, value]) => [`columns[${key}]`, value] as const);
  const answers: Fields = [
    ...columns,
    ...words("structures", { Fire: "fire-lines" }),
    ...words("works", { Basket: "strainer" }),
  ];

  it("offers the columns of a first file, tells of one that has none, and which are still to be chosen", async () => {
    const { send } = await withStudy("work");
    expect(await (await send([], file)).text()).toContain("Its columns are offered below");
    expect(await (await send([], "nothing here\n")).text()).toContain("found no line of column names");
    const part = await (await send([["columns[structure]", "Asset"]], file)).text();
    expect(part).toContain("found date nothing");
  });

  it("asks what each word means, shows the sums and keeps own values", async () => {
    const { send, studies, id } = await withStudy("work");
    const asked = await (await send(columns, file)).text();
    expect(asked).toContain("The structure that “Fire” means");
    expect(asked).toContain("The kind of work that “Basket” means");
    const page = await (await send(answers, file)).text();
    expect(page).toContain("Own value for the hours of work to clean a strainer once: 3 ± 2 h, of 2 orders");
    expect(page).toContain("Dropped and not kept: By.");
    expect(page).not.toContain("Doe");
    await send([...answers, ["upload", uploadIn(page)], ["act", "keep"]]);
    const { text = "", note } = studies.find(id) ?? {};
    expect(note).toBe("Work orders from file.csv");
    expect(text).toContain("origin: File file.csv");
    expect(text).toMatch(/id: raw-water.strainer-hours, value: 3 ± 2 h/);
    expect(text).not.toContain("Doe");
  });

  it("keeps where a file comes from as told, until the name of the next takes the place of a name", async () => {
    const { send, studies, id } = await withStudy("work");
    for (const [told, kept] of [
      ["", "File file.csv"],
      ["plant records", "plant records"],
      ["", "plant records"],
    ] as const) {
      const page = await (await send([...answers, ["origin", told]], file)).text();
      await send([...answers, ["origin", told], ["upload", uploadIn(page)], ["act", "keep"]]);
      expect(studies.find(id)?.text).toContain(`origin: ${kept}`);
    }
  });

  it("tells of a structure that is gone, and lists lines with faults", async () => {
    const { send } = await withStudy("work");
    const gone = await (await send([...columns, ...words("structures", { Fire: "no-more" })], file)).text();
    expect(gone).toContain("found the structures “Fire” in 2 lines");
    const page = await (await send(answers, file.replace("05-01", "02-30"))).text();
    expect(page).toContain("Line 2: found date &quot;2025-02-30&quot;; allowed: a day that the month has.");
    expect(page).toContain("Keep the own values without the 1 line");
  });

  it.each([
    ["dates that no file has", "{ date: Day, dates: sideways }"],
    ["a name of a column that is too long", `{ date: ${"D".repeat(300)} }`],
    ["a word that is too long", `{ date: Day, structures: { ${"W".repeat(300)}: other } }`],
  ])("opens for an unfinished study that maps %s", async (_what, mapped) => {
    const { studies, ask } = await withStudy("work");
    const text = readFileSync(examplePath("sorrel-bend"), "utf8");
    const draft = `${text}workOrders: { origin: ours, export: ${mapped} }\n`;
    const { id } = studies.create(draft, { author: "", note: "", origin: "upload" });
    const page = await ask(`/studies/${id}/records/work`);
    expect(page.status).toBe(200);
    expect(await page.text()).toContain("The study already has these: ours.");
  });

  it("takes the meanings of hundreds of words, as many as a list of equipment has", async () => {
    const { send } = await withStudy("work");
    const names = Array.from({ length: 300 }, (_, index) => [`Pump ${index}`, "other"]);
    const page = await send([...answers, ...words("structures", Object.fromEntries(names))], file);
    expect(page.status).toBe(200);
    expect(await page.text()).toContain('<input type="hidden" name="word" value="Pump 299">');
  });

  it("tells what is wrong with a text beside the form, and keeps what was typed and the file", async () => {
    const { send } = await withStudy("work");
    const typed: Fields = [...answers, ["author", "R. Roe"]];
    const refused = await send([...typed, ["origin", "o".repeat(201)]], file);
    const page = await refused.text();
    expect(refused.status).toBe(400);
    expect(page).toMatch(
      /Where the file comes from: found [^<]*; allowed: at most 200 characters\. Correct it/,
    );
    expect(page).toContain('value="R. Roe"');
    expect(page).toContain('name="columns[date]" value="Closed"');
    const again = await (await send([...typed, ["upload", uploadIn(page)]])).text();
    expect(again).toContain("Own value for the hours of work");
  });
});
