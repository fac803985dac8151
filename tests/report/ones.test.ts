import { describe, expect, it } from "vitest";
import { comparisonText } from "../../src/cli/comparison-text.js";
import { counted } from "../../src/counted.js";
import { plainForms } from "../../src/forms/forms.js";
import { renderReport } from "../../src/report/document/html.js";
import type { StudyRun } from "../../src/study/prepare/compute.js";
import { exampleDocument, valueAt } from "../study/example.js";
import { dryOut, type Edit, smallRun, withSchedule } from "./edited.js";

const example = exampleDocument();
const first = (place: string, changes: object) => [{ ...Object(valueAt(example, place)), ...changes }];
const everyMonth = (value: number) =>
  Object.fromEntries(Object.keys(Object(valueAt(example, "boats.launches"))).map((month) => [month, value]));
const afterInfestation = { share: "0 %" };
const asked = {
  ...{ id: "asked", name: "Stations", afterInfestation },
  steps: {
    ...{ declaration: "60 %", quickCheck: "80 %", inspection: "79 %", hotWash: "84 %", deterrence: "30 %" },
    ...{ origin: "invented", seals: [{ vesselClass: "infested-30-days", share: "1 %" }] },
  },
  open: [{ from: "07:00", to: "08:00" }],
  station: {
    ...{ mostInspectors: 1, wage: "$23/h", loading: "24 %", origin: "invented" },
    service: { quickCheck: "4 min", fullInspection: "25 min", setAsideShare: "3 %" },
    target: { share: "90 %", wait: "1 min" },
  },
  staff: [{ name: "Inspector", hoursPerYear: 1, people: 1, wage: "$23/h", loading: "24 %" }],
  equipment: [{ name: "Hot-wash unit", count: 1, price: "$17,000", life: 1 }],
  fees: [{ name: "Sticker", countPerYear: 1, fee: "$10" }],
  monitoring: { planktonTows: 1, origin: "invented" },
};

/** One of everything that is counted: a year, a structure, a class, a site, a kind of day, an inspector, a boat. */
const ones = (structure: string, changes: object): readonly Edit[] => [
  ["money.horizon", 1],
  ["structures", first(`structures[${structure}]`, changes)],
  ["boats.launches", everyMonth(1)],
  ["boats.classes", first("boats.classes[infested-30-days]", { share: "100 %" })],
  ["boats.sites", first("boats.sites[0]", { share: "100 %" })],
  ["boats.traffic.dayTypes", first("boats.traffic.dayTypes[0]", { days: 1, launchesByHour: [1, 1, 1, 1] })],
  ["options", [{ id: "none", name: "No program", monitoring: asked.monitoring, afterInfestation }]],
  ["study.requestedOption", "asked"],
];

const withFixture = { fixtures: [{ name: "gate", count: 1, hoursEach: "1 h" }] };
const dry = { ...dryOut, monitoring: asked.monitoring };
const runs: Readonly<Record<string, () => StudyRun>> = {
  "an intake": () => smallRun(ones("intake", withFixture), asked),
  "a power plant of one unit": () => smallRun(ones("hydropower", { units: 1 }), asked),
  "one dock": () => smallRun(ones("dock", { count: 1 }), asked),
  "one ramp": () => smallRun(ones("ramp", {}), asked),
  "one duty": () =>
    smallRun(ones("lake-wide", { items: [{ name: "Duty", cost: "$1/yr", origin: "invented" }] }), asked),
  "another schedule": () =>
    smallRun([...ones("ramp", {}), ...withSchedule, ["study.requestedOption", dry.id]], dry),
  "an infested lake": () =>
    smallRun(
      [...ones("dock", { count: 1 }), ["lake.infestedSince", 2026], ["options[none].monitoring", undefined]],
      { ...asked, monitoring: undefined },
    ),
};

const plain = (html: string) =>
  html
    .replace(/<(style|script)\b[\s\S]*?<\/\1>/g, " ")
    .replace(/<sub>[^<]*<\/sub>/g, "")
    .replace(/<[^>]+>/g, " ")
    .replace(/\s+/g, " ");

const nouns =
  "years|days|months|weeks|hours|minutes|seconds|boats|launches|inspectors|people|futures|figures|options|problems|structures|units|lines|pieces|docks|ramps|sites|classes|types|parts|tows|plates|duties|others|points|rows|seasons|assumptions|paying boats|payments|levels|schedules";
/** "1 years", with a few words around it; "0.1 years" and "2021 days" are none. */
const wrong = new RegExp(`.{0,50}(?<![\\d.,–-])1 (?:${nouns})\\b.{0,20}`, "g");
const wrongIn = (text: string) => [...text.matchAll(wrong)].map(([found]) => found);

describe("a study with one of everything", () => {
  it.each(Object.entries(runs))("has no plural after a one: %s", async (_, make) => {
    const run = make();
    const forms = await plainForms({ run, printedOdds: undefined, edition: "" });
    const html = forms.filter(({ path }) => path.endsWith(".html"));
    const pages = [
      renderReport(run, { inline: false }),
      ...html.map(({ bytes }) => new TextDecoder().decode(bytes)),
    ];
    const attributes = pages.flatMap((page) => [...page.matchAll(/(?:aria-label|alt|title)="([^"]*)"/g)]);
    const texts = [...pages.map(plain), ...attributes.map(([, text = ""]) => text), comparisonText(run)];
    expect(texts.flatMap(wrongIn)).toEqual([]);
    expect(texts.join(" ")).toMatch(/(within|over|in) 1 year\b/);
  });
});

describe("a count with its noun", () => {
  // By hand.
  it.each([
    [counted(1, "year"), "1 year"],
    [counted(0, "year"), "0 years"],
    [counted(30, "year"), "30 years"],
    [counted(1200, "boat"), "1,200 boats"],
    [counted("1", "class", "classes"), "1 class"],
    [counted("1.0", "year"), "1.0 years"],
    [counted(2, "study", "studies"), "2 studies"],
  ])("is %s", (found, expected) => {
    expect(found).toBe(expected);
  });

  it("is sought by a pattern that finds what it should", () => {
    expect(wrongIn("within 1 years, 1 paying boats")).toHaveLength(1);
    expect(wrongIn("within 21 years, 0.1 days, 1 year, –1 points")).toEqual([]);
  });
});
