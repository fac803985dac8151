import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { examplePath } from "../study/example.js";
import { type Fields, sendingFiles, uploadIn } from "./sending-files.js";

/** An invented season: 100 boats from elsewhere, 10 held, 5 with mussels; 30 of the lake's own. */
const line = (kind: string, index: number, held: boolean, mussels: boolean) =>
  `7/${(index % 28) + 1}/2027;${kind};AB ${index};"Doe, J.";${held ? "yes" : "no"};${mussels ? "x" : ""};2.5`;
const lines = [
  ...Array.from({ length: 100 }, (_, index) => line("Out of state", index, index < 10, index < 5)),
  ...Array.from({ length: 30 }, (_, index) => line("Resident", index, false, false)),
];
const log = `Inspected on;Boat type;Plate;Owner;Held;Mussels found;Min\n${lines.join("\n")}\n`;
const columns = {
  ...{ date: "Inspected on", class: "Boat type", setAside: "Held", fouled: "Mussels found" },
  quickCheck: "Min",
};
const answers: Fields = [
  ...Object.entries(columns).map(([key, value]) => [`columns[${key}]`, value] as const),
  ...[
    ["about", "classes"] as const,
    ["word", "Out of state"] as const,
    ["meaning", "infested-30-days"] as const,
  ],
  ...[["about", "classes"] as const, ["word", "Resident"] as const, ["meaning", "never-left"] as const],
];

const study = readFileSync(examplePath("sorrel-bend"), "utf8");
const withStudy = () => sendingFiles(study, "records/boats", "boats.csv");

const listed = (page: string, id: string) =>
  new RegExp(`id="${id}"[\\s\\S]*?<ul[^>]*>([\\s\\S]*?)</ul>`).exec(page)?.[1] ?? "";

describe("the page of logs", () => {
  it("offers the columns of a first file, then asks for the class that each word means", async () => {
    const { send } = await withStudy();
    const page = await (await send([], log)).text();
    expect(page).toContain('<option value="Inspected on" selected>');
    expect(page).toContain('<option value="Mussels found" selected>');
    expect(page).not.toMatch(/Doe|AB 1/);
    const mapped = answers.filter(([key]) => key.startsWith("columns"));
    const asked = await (await send([...mapped, ["upload", uploadIn(page)]])).text();
    expect(asked).toContain("found the classes “Out of state” in 100 lines, “Resident” in 30 lines");
    expect(asked).toContain("The class that “Resident” means");
    expect(asked).not.toContain('value="keep"');
  });

  it("shows the sums and what is dropped, and keeps no name and no plate", async () => {
    const { send, studies, id, ask } = await withStudy();
    const page = await (await send([...answers, ["set[stations][]", "full-season"]], log)).text();
    expect(page).toContain("130 lines summed: 130 boats screened, 10 held, 5 with mussels.");
    expect(page).toContain("Dropped and not kept: Plate, Owner.");
    expect(page).toMatch(/<td>2027<\/td><td>infested-30-days<\/td><td class="num">100<\/td>/);
    expect(page).toContain("The station of “full-season” gets the measured minutes");
    expect(page).not.toMatch(/Doe|AB 1/);
    const all = [
      ...answers,
      ["set[stations][]", "full-season"],
      ["upload", uploadIn(page)],
      ["act", "keep"],
    ] as const;
    expect((await send(all)).status).toBe(303);
    const { text = "", note } = studies.find(id) ?? {};
    expect(note).toBe("Log of boats from boats.csv");
    expect(text).toContain("2027,infested-30-days,100,10,5");
    expect(text).toContain("quickCheck: 2.5 min");
    expect(text).not.toMatch(/Doe|AB 1/);
    const after = await (await ask(`/studies/${id}/records/boats`)).text();
    expect(after).toContain('name="columns[class]" value="Boat type"');
    expect(after).toContain("The class that “Out of state” means");
  });

  it("lists lines with faults and keeps the others only where that is chosen", async () => {
    const { send, studies, id } = await withStudy();
    const broken = log.replace("7/3/2027", "2/30/2027").replace("7/4/2027;Out of state", "7/4/2027;");
    const page = await (await send(answers, broken)).text();
    expect(listed(page, "refused")).toContain(
      "Line 4: found date &quot;2/30/2027&quot;; allowed: a day that",
    );
    expect(listed(page, "refused")).toContain("Line 5: found class nothing");
    expect(page).toContain("Keep the sums without the 2 lines");
    await send([...answers, ["upload", uploadIn(page)], ["act", "keep"]]);
    expect(studies.find(id)?.note).toBe("Log of boats from boats.csv, without 2 of its lines");
    expect(studies.find(id)?.text).toContain("2027,infested-30-days,98,8,3");
  });

  it.each([
    ["a file without a mapped column", log.replace("Held", "Stopped"), "no column &quot;Held&quot;"],
    ["dates that may be read in two ways", log.replace(/7\/\d+\/2027/g, "3/4/2027"), "Say whether the month"],
    ["an empty file", "", "found an empty file"],
    ["a word for a class that is none", log.replace("Resident", "Visitor"), "“Visitor” in 1 line"],
  ])("asks or tells of %s, and keeps nothing", async (_what, file, told) => {
    const { send, studies, id } = await withStudy();
    const page = await (await send([...answers, ["act", "keep"]], file)).text();
    expect(page).toContain(told);
    expect(studies.find(id)?.revision).toBe(1);
  });
});
