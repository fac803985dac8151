import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { editsOfAction } from "../../src/editor/actions.js";
import { chosenEdits, clashes } from "../../src/editor/conflict.js";
import { edited } from "../../src/editor/study-text.js";
import { examplesFolder } from "../../src/report/document/assets.js";

const text = readFileSync(join(examplesFolder, "sorrel-bend.yaml"), "utf8");
const document = parse(text);
const pressing = (action: string) => parse(edited(text, editsOfAction(action, document)));

describe("a button of a form", () => {
  it("adds an item with an id that is free", () => {
    const { bearers } = pressing("add:money/bearers").money;
    expect(bearers).toHaveLength(document.money.bearers.length + 1);
    expect(bearers.at(-1)).toEqual({ id: `bearer-${bearers.length}` });
  });

  it("moves a row down and another one out", () => {
    const [first, second] = document.lake.drawdown;
    expect(pressing("down:lake/drawdown/0").lake.drawdown.slice(0, 2)).toEqual([second, first]);
    expect(pressing("remove:lake/drawdown/0").lake.drawdown[0]).toEqual(second);
  });

  it("turns a pump into gravity, and keeps nothing that gravity does not know", () => {
    expect(pressing("way:structures/0/supply:gravity").structures[0].supply).toEqual({ by: "gravity" });
  });

  it("makes twelve months of one value", () => {
    const one = edited(text, [{ at: ["structures", 2, "energyPrice"], value: "$50/MWh" }]);
    const twelve = edited(one, editsOfAction("way:structures/2/energyPrice:months", parse(one)));
    expect(Object.values(parse(twelve).structures[2].energyPrice)).toEqual(Array(12).fill("$50/MWh"));
  });

  it("puts a record in place of a schedule, and the schedule back as it was", () => {
    const record = pressing("way:lake/drawdown:1").lake;
    expect(record).toMatchObject({ record: {} });
    expect(record.drawdown).toBeUndefined();
    const back = editsOfAction("way:lake/drawdown:0", { lake: record }, (at) =>
      at.join("/") === "lake/drawdown" ? document.lake.drawdown : undefined,
    );
    expect(back).toEqual([
      { at: ["lake", "record"], remove: true },
      { at: ["lake", "drawdown"], value: document.lake.drawdown },
    ]);
  });

  it("takes one of two that contradict each other out", () => {
    const both = { lake: { drawdown: [{ on: "01-01" }], record: { csv: "x" } } };
    expect(editsOfAction("way:lake/drawdown:1", both)).toEqual([{ at: ["lake", "drawdown"], remove: true }]);
    expect(editsOfAction("way:lake/drawdown:0", both)).toEqual([{ at: ["lake", "record"], remove: true }]);
  });

  it("begins with an empty row or text where nothing was put aside", () => {
    const counts = { boats: { traffic: { csv: "date,hour,launches", monthGroups: [] } } };
    expect(editsOfAction("way:boats/traffic/dayTypes:0", counts)).toEqual([
      { at: ["boats", "traffic", "csv"], remove: true },
      { at: ["boats", "traffic", "monthGroups"], remove: true },
      { at: ["boats", "traffic", "dayTypes"], value: [{ id: "day-type-1" }] },
    ]);
  });

  it("takes a list that may be left out away with its last row, and leaves others empty", () => {
    const one = { lake: { drawdown: [{ on: "01-01" }], storageTable: [{}] } };
    expect(editsOfAction("remove:lake/drawdown/0", one)).toEqual([
      { at: ["lake", "drawdown"], remove: true },
    ]);
    expect(editsOfAction("remove:lake/storageTable/0", one)).toEqual([
      { at: ["lake", "storageTable", 0], remove: true },
    ]);
  });

  it.each([
    "way:lake/drawdown:0",
    "way:lake/drawdown:",
    "way:lake/drawdown:7",
    "add:lake/nothing",
    "remove:lake/nothing",
    "up:lake/drawdown/0",
    "way:lake/name:months",
    "burn:lake",
  ])("that asks for %s does nothing", (action) => expect(editsOfAction(action, document)).toEqual([]));
});

describe("a text", () => {
  it("whose value is an alias gets a copy there, and the other place stays", () => {
    const aliased = "lake:\n  chemistry: &water { calcium: 5 mg/L }\nother: *water\n";
    const changed = parse(edited(aliased, [{ at: ["other", "calcium"], value: "9 mg/L" }]));
    expect(changed).toEqual({ lake: { chemistry: { calcium: "5 mg/L" } }, other: { calcium: "9 mg/L" } });
  });

  it("gets the groups that lead to a value, also where nothing or something else stands", () => {
    const changed = edited("lake:\n", [{ at: ["lake", "drawdown", 0, "on"], value: "06-01" }]);
    expect(parse(changed)).toEqual({ lake: { drawdown: [{ on: "06-01" }] } });
  });
});

describe("two changes of a study", () => {
  const base = { lake: { name: "A", drawdown: [{ on: "01-01" }, { on: "06-01" }] } };

  it("of different places do not need a choice", () => {
    const mine = { lake: { ...base.lake, name: "B" } };
    const [found] = clashes([{ at: ["lake", "name"], value: "B" }], { base, theirs: base, mine });
    expect(found).toMatchObject({ before: "A", theirs: "A", mine: "B", both: false });
  });

  it("of a list from which rows were taken are a choice between the lists", () => {
    const theirs = { lake: { name: "A", drawdown: [{ on: "06-01" }] } };
    const mine = { lake: { name: "A", drawdown: [{ on: "01-01" }, { on: "07-01" }] } };
    const found = clashes([{ at: ["lake", "drawdown", 1, "on"], value: "07-01" }], { base, theirs, mine });
    expect(found).toMatchObject([{ at: ["lake", "drawdown"], both: true, theirs: "1 row: 06-01" }]);
    expect(chosenEdits(found, { "choice:lake/drawdown": "mine" }, mine)).toEqual([
      { at: ["lake", "drawdown"], value: mine.lake.drawdown },
    ]);
    expect(chosenEdits(found, { "choice:lake/drawdown": "theirs" }, mine)).toEqual([]);
  });
});
