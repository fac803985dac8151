import { describe, expect, it, test } from "vitest";
import { type DryingView, dryingView } from "../../src/method/drying-view.js";
import { renderMethod } from "../../src/method/method-document.js";
import { dryDose, dryingParameters, frostKillHours, survival } from "../../src/model/mussels/drying.js";
import { reportContext } from "../../src/report/document/context.js";
import type { ChartView, TableView } from "../../src/report/words/view-types.js";
import { runStudy } from "../../src/study/prepare/compute.js";
import { assumed } from "../model/assumptions.js";
import { assumptions, exampleDocument, exampleRun } from "../report/runs.js";

const view = dryingView(reportContext(exampleRun("sorrel-bend")));
const zebra = dryingParameters("zebra", assumed);
const quagga = dryingParameters("quagga", assumed);

/** Middles of the published size classes, 10–18 mm and 21–28 mm. */
const small = 14;
const large = 24.5;
const coolDamp = { temperature: 10, humidity: 0.95 };
const warmDry = { temperature: 20, humidity: 0.5 };

type Air = typeof coolDamp;
const alive = (hours: number, air: Air, lengthMm: number, parameters = zebra) =>
  survival(dryDose(hours, air, parameters), lengthMm, parameters);

/** A cell by the start of its row's first cell, the shells, and its column's head. */
function cell({ head, rows }: TableView, start: string, shells: string, column: string): string {
  const row = rows.find(({ cells }) => cells[0]?.text.startsWith(start) && cells[1]?.text.includes(shells));
  return row?.cells[head.findIndex(({ text }) => text.startsWith(column))]?.text ?? "";
}

const number = (text: string) => Number(text.replace("−", "-").replace(/[^\d.-]/g, ""));
const printed = (start: string, shells: string, column = "Model, zebra") =>
  cell(view.fit, start, shells, column);

describe("the printed fit of drying", () => {
  test.each([
    ["10 °C, 95%", "small", 0.1],
    ["10 °C, 95%", "large", 0.73],
  ] as const)("at %s has the %s within ten points of the published %d", (air, shells, published) => {
    // Ricciardi and others 1995, abstract: after 10 days; tolerance of 10 points.
    const found = number(printed(air, shells)) / 100;
    expect(Math.abs(found - published)).toBeLessThanOrEqual(0.1);
    expect(number(printed(air, shells, "Published")) / 100).toBe(published);
  });

  it("has small zebra dead after 2 to 4 days of warm air, and large ones alive beyond 5", () => {
    // Ricciardi and others 1995, abstract: small live 1-3 days (2-4 accepted as death), large over 5.
    expect(number(printed("20 °C", "small"))).toBeGreaterThanOrEqual(2);
    expect(number(printed("20 °C", "small"))).toBeLessThanOrEqual(4);
    expect(number(printed("20 °C", "large"))).toBeGreaterThan(5);
  });

  it("has nearly all alive after 60 hours at 5 °C", () => {
    // Paukstis and others 1999, abstract: nearly 100 %; 95 % is asked for.
    expect(number(printed("5 °C", "small"))).toBeGreaterThanOrEqual(95);
  });

  it("prints what the model computes", () => {
    for (const [shells, lengthMm] of [
      ["small", small],
      ["large", large],
    ] as const) {
      for (const [column, parameters] of [
        ["Model, zebra", zebra],
        ["Model, quagga", quagga],
      ] as const) {
        const share = number(printed("10 °C", shells, column)) / 100;
        expect(share).toBeCloseTo(alive(240, coolDamp, lengthMm, parameters), 2);
        // The printed day of death is rounded to a tenth: 5 % are alive within 2 hours and a quarter of it.
        const hours = 24 * number(printed("20 °C", shells, column));
        expect(alive(hours - 2, warmDry, lengthMm, parameters)).toBeGreaterThan(0.05);
        expect(alive(hours + 2, warmDry, lengthMm, parameters)).toBeLessThan(0.05);
      }
    }
  });

  it("never has more quagga alive than zebra, nor more small than large", () => {
    // Ricciardi and others 1995, abstract: survival rises with size; quagga at or below zebra.
    for (const air of ["10 °C", "20 °C"]) {
      expect(number(printed(air, "large"))).toBeGreaterThan(number(printed(air, "small")));
      expect(number(printed(air, "small", "Model, quagga"))).toBeLessThanOrEqual(
        number(printed(air, "small")),
      );
      expect(number(printed(air, "large", "Model, quagga"))).toBeLessThanOrEqual(
        number(printed(air, "large")),
      );
    }
  });
});

describe("the printed fit of frost", () => {
  const hoursAt = (temperature: string, column: string) =>
    view.frostFit.rows.find(({ cells }) => cells[0]?.text === temperature)?.cells[
      view.frostFit.head.findIndex(({ text }) => text.startsWith(column))
    ]?.text ?? "";

  // Payne 1992, by way of the Columbia River plan: 48 h at 0 and −1.5 °C, 5-7 h at −3 °C, under 2 h at −10 °C.
  test.each([
    ["0", 48, 48],
    ["−1.5", 48, 48],
    ["−3", 5, 7],
    ["−10", 0, 2],
  ])("at %s °C lies between %d and %d hours, as the model computes", (temperature, low, high) => {
    const printed = number(hoursAt(temperature, "Model, single"));
    expect(printed).toBeGreaterThanOrEqual(low);
    expect(printed).toBeLessThanOrEqual(high);
    expect(printed).toBe(Math.round(frostKillHours(number(temperature), zebra)));
    expect(number(hoursAt(temperature, "Model, clusters"))).toBeGreaterThanOrEqual(printed);
  });
});

interface Dataset {
  readonly label: string;
  readonly data: ReadonlyArray<{ x: number; y: number }>;
}
const datasets = ({ json }: ChartView) =>
  (JSON.parse(json) as { data: { datasets: Dataset[] } }).data.datasets;
const curveOf = (chart: ChartView, label: string) =>
  datasets(chart).find((each) => each.label.startsWith(label))?.data ?? [];

describe("the charts of drying and frost", () => {
  it("draw the model's curves", () => {
    for (const [chart, air] of [
      [view.cool, coolDamp],
      [view.warm, warmDry],
    ] as const) {
      for (const [label, lengthMm, parameters] of [
        ["zebra, large", large, zebra],
        ["zebra, small", small, zebra],
        ["quagga, small", small, quagga],
      ] as const) {
        const curve = curveOf(chart, label);
        expect(curve.length).toBeGreaterThan(50);
        for (const { x, y } of curve) expect(y / 100).toBeCloseTo(alive(x, air, lengthMm, parameters), 3);
      }
    }
    for (const { x, y } of curveOf(view.frost, "single")) expect(y).toBeCloseTo(frostKillHours(x, zebra), 2);
  });

  it("mark the published points where they were published", () => {
    expect(curveOf(view.cool, "published, large")).toEqual([{ x: 240, y: 73 }]);
    expect(curveOf(view.cool, "published, small")).toEqual([{ x: 240, y: 10 }]);
    expect(curveOf(view.warm, "published, small").map(({ x }) => x)).toEqual([24, 72]);
    expect(curveOf(view.warm, "published, large")[0]?.x).toBe(120);
    expect(curveOf(view.frost, "published")).toContainEqual({ x: -1.5, y: 48 });
  });

  it("state in their titles what the tables print", () => {
    expect(view.cool.title).toContain(printed("10 °C", "large"));
    expect(view.warm.title).toContain(`${number(printed("20 °C", "small")).toFixed(1)} days`);
    const html = renderMethod(assumptions, { inline: false });
    for (const { tableId } of [view.cool, view.warm, view.frost])
      expect(html).toContain(`<table id="${tableId}"`);
  });

  it("leave quagga out of a study of zebra mussels, and follow a study's own values", () => {
    const document = exampleDocument("sorrel-bend");
    const of = (change: Partial<typeof document>): DryingView =>
      dryingView(reportContext(runStudy({ ...document, ...change }, assumptions)));
    const ofZebra = of({ lake: { ...document.lake, species: "zebra" } });
    expect(datasets(ofZebra.cool).some(({ label }) => label.startsWith("quagga"))).toBe(false);
    expect(ofZebra.fit.head.some(({ text }) => text.includes("quagga"))).toBe(false);
    const own = of({ overrides: [{ id: "drying.reference-hours", value: "130 h", reason: "own trial" }] });
    expect(number(cell(own.fit, "10 °C", "large", "Model, zebra"))).toBeLessThan(
      number(printed("10 °C", "large")),
    );
  });
});
