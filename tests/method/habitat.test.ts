import { describe, expect, it } from "vitest";
import { habitatView } from "../../src/method/habitat-view.js";
import { assumptions } from "../report/runs.js";

const view = habitatView(assumptions);
const cellsOf = (lake: string) =>
  view.lakes.rows.find(({ cells }) => cells[0]?.text.startsWith(lake))?.cells.map(({ text }) => text) ?? [];
const classOf = (lake: string) => cellsOf(lake)[4];

describe("the printed habitat of lakes that are known to be infested", () => {
  // National Eutrophication Survey 1972-75, as typed by Stachelek and others 2018 (text): alkalinity in mg CaCO3/L. Found
  // infested by the sources in assumptions/habitat-lakes.yaml.
  it.each([
    ["Lake Mead", 136],
    ["Lake Mohave", 137],
    ["Lake Havasu", 136],
    ["Lake Texoma", 128],
    ["Lewisville Lake", 113],
    ["Stillhouse Hollow", 162],
    ["Seneca Lake", 93],
    ["Lake Minnetonka", 130],
  ])("is moderate or high for %s, whose alkalinity is %d", (lake, alkalinity) => {
    expect(cellsOf(lake)[2]).toContain(`alkalinity ${alkalinity} mg CaCO₃/L`);
    expect(["moderate", "high"]).toContain(classOf(lake));
  });

  it("is moderate or high for Wollaston Lake, whose calcium is 28 mg/L", () => {
    // Chandos dossier, web page (text): of the order of 28 mg/L, and mussels found.
    expect(cellsOf("Wollaston")[2]).toBe("calcium 28 mg/L");
    expect(["moderate", "high"]).toContain(classOf("Wollaston"));
  });

  it("is low for Lake Champlain, which is told as a disagreement with its figure", () => {
    // The same survey: alkalinity 46 mg CaCO3/L. Class of 30 to 55 from memory.
    expect(classOf("Lake Champlain")).toBe("low");
    expect(view.disagreeing).toMatch(/^9 of 10 .*Lake Champlain, low by alkalinity of 46 mg CaCO₃\/L/);
  });

  it("is next to none at 4.5 mg/L of calcium", () => {
    const soft = view.lakes.rows.filter(({ cells }) => cells[2]?.text === "calcium 4.5 mg/L");
    expect(soft.map(({ cells }) => cells[1]?.text)).toEqual(["zebra", "quagga"]);
    for (const { cells } of soft) expect(Number(cells[5]?.text)).toBeLessThan(0.05);
  });

  it("names the infested lakes that it leaves out, since nothing was read of their water", () => {
    expect(view.leftOut).toContain("Belton Lake, Texas");
    expect(view.leftOut).toContain("Oneida Lake, New York");
  });

  it("names two sources of each lake, or one that has both", () => {
    const keys = cellsOf("Lake Mead").at(-1);
    expect(keys).toBe("[eutrophication-survey] [usbr-mussel-history]");
  });
});
