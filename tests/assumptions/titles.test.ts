import { describe, expect, it } from "vitest";
import { assumptionRows } from "../../src/report/document/assumptions-list.js";
import { realSet } from "./real.js";

const assumptions = realSet();
const entries = [...assumptions.entries.values()];
const reading = { assumptions, used: undefined, own: new Map() };

const lettersOf = (text: string) =>
  text
    .toLowerCase()
    .replaceAll(/[^a-z]+/g, " ")
    .trim();

describe("the title of each assumption", () => {
  it("is of at most 70 characters, and of one alone", () => {
    expect(entries.filter(({ title }) => title.length > 70).map(({ id }) => id)).toEqual([]);
    const seen = new Map<string, string>();
    for (const { id, title } of entries) {
      expect(seen.get(lettersOf(title) + title.replaceAll(/\D+/g, " ")), `${id}: ${title}`).toBeUndefined();
      seen.set(lettersOf(title) + title.replaceAll(/\D+/g, " "), id);
    }
  });

  it("is in words, and not its id written apart", () => {
    for (const { id, title } of entries) {
      const words = lettersOf(id);
      const copies = [words, words.split(" ").slice(1).join(" "), words.split(" ").reverse().join(" ")];
      expect(copies, id).not.toContain(lettersOf(title));
      expect(title, id).not.toMatch(/\.(?!\d)/);
    }
  });

  it("has beside it only words that it does not have itself", () => {
    const repeated = entries.flatMap(({ id, title, synonyms = [] }) =>
      synonyms.filter((each) => title.toLowerCase().includes(each.toLowerCase())).map((each) => [id, each]),
    );
    expect(repeated).toEqual([]);
  });
});

/** What people of the trade would type for what they look for: from memory, no source. */
const practitioners: ReadonlyArray<readonly [words: string, id: string]> = [
  ["pigging", "cleaning.conduit.rate"],
  ["head loss", "typical.rack-head-limit"],
  ["electricity", "plan.heat.energy-price"],
  ["wage", "typical.wage"],
  ["hourly rate", "labour.maintenance-rate"],
  ["labor", "labour.maintenance-rate"],
  ["downtime", "supply.outage-lost-share"],
  ["hydropower downtime", "hydropower.outage-days"],
  ["clogging", "rack.gap-closed-limit"],
  ["clogged nozzles", "irrigation.plugged-share"],
  ["dive crew", "cleaning.rack.visit"],
  ["hypochlorite", "plan.oxidant.capital"],
  ["silicone", "plan.foul-release.capital"],
  ["freezing", "drying.frost-survival"],
  ["emersion", "drying.reference-hours"],
  ["larval supply", "growth.settlers-per-month"],
  ["interest rate", "money.other-rate.high"],
  ["tipping fee", "disposal.tipping-fee"],
  ["hauling", "disposal.haulage"],
  ["boiler", "plan.heat.visit"],
  ["FTE", "request.full-time-hours"],
  ["environmental DNA", "detection.per-edna-sample"],
  ["fouling factor", "exchanger.fouling-resistance"],
  ["PAC", "taste-odour.dose"],
  ["propagule pressure", "arrival.shape"],
  ["unit weight", "growth.bulk-density"],
  ["derate", "hydropower.derating-limit"],
  ["ROV", "plan.trigger.inspection"],
  ["eradication", "response.treatment-price"],
  ["redundant line", "plan.second-line.capital"],
  ["decontamination", "typical.efficacy"],
  ["DO", "suitability.oxygen.high-from"],
  ["Manning n", "irrigation.canal-roughness"],
  ["molluscicide", "response.treatment-price"],
  ["beach cleaning", "ramp.sweeping-rate"],
];

describe("a word of the trade", () => {
  it.each(practitioners)("%s finds among the first three %s", (words, id) => {
    const found = assumptionRows(reading, "all", words);
    expect(found.slice(0, 3).map((row) => row.id)).toContain(id);
  });
});
