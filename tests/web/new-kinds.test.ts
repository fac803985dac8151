import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { readStudyText } from "../../src/study/reading/read.js";
import { serving } from "./serving.js";

const months = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];
const pipe = { length: "420 m", diameter: "200 mm", roughness: "0.1 mm", minorLoss: "3" };
const under = (group: string, fields: Readonly<Record<string, string>>) =>
  Object.fromEntries(Object.entries(fields).map(([name, value]) => [`${group}/${name}`, value]));

/** What an author must know of one; the rest is left empty. */
const kinds = [
  [
    "pumping-plant",
    "Lost deliveries",
    {
      elevation: "407.5 m",
      ...under("delivered", Object.fromEntries(months.map((month) => [month, "900 m3"]))),
      area: "2 ha",
      method: "sprinklers",
      ...under("main", pipe),
      "pump/energyPrice": "€0.19/kWh",
      lostDeliveries: "€0.40/m3",
    },
  ],
  [
    "hatchery",
    "Aeration head",
    {
      elevation: "405 m",
      requiredFlow: "0.012 m3/s",
      ...under("line", { ...pipe, availableHead: "4 m" }),
      "shortfall/price": "€6/m3",
    },
  ],
  [
    "treatment-plant",
    "Taste and odour",
    { treated: "0.02 m3/s", intake: "village-intake", "tasteAndOdour/origin": "a lake poor in phosphorus" },
  ],
] as const;

describe("a structure that serves land, fish or water works", () => {
  it.each(kinds)("is added by its form: %s", async (kind, label, fields) => {
    const { studies, ask } = await serving();
    const { id } = studies.copy("example-ninemoss", "Ada");
    const send = (page: string, revision: number, body: Readonly<Record<string, string>>) =>
      ask(page, {
        method: "POST",
        body: new URLSearchParams({
          ...{ "#author": "Ada", "#base": String(revision), "#expected": String(revision) },
          ...body,
        }),
      });
    const made = await send(`/studies/${id}/edit/structures/new`, 1, { name: "New one", kind });
    const page = made.headers.get("location") ?? "";
    expect(await (await ask(page)).text()).toContain(label);
    const { structures } = parse(studies.find(id)?.text ?? "");
    const place = `structures/${structures.length - 1}`;
    // What a shortfall costs is chosen in a list first; its fields are there in the next page.
    const ways = kind === "hatchery" ? { [`way:${place}/shortfall`]: "trucking" } : {};
    const entered = under(place, { bearer: "trust", ...fields });
    for (const more of [ways, {}]) {
      const revision = studies.find(id)?.revision ?? 0;
      expect((await send(page, revision, { ...entered, ...more })).status).toBe(303);
    }
    const study = readStudyText(studies.find(id)?.text ?? "", "study.yaml");
    expect(study.structures.at(-1)).toMatchObject({ kind, name: "New one" });
  });
});
