import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { placedLabels } from "../../../src/report/search/placed-labels.js";

const frame = { right: 316, top: 8, base: 100 };
/** Letters of a label in the picture take some 5 of its units at most, and a line 10. */
const widthOf = (text: string) => text.length * 5;

describe("labels of a picture", () => {
  it("stand beside their points, inside the frame, and none over another, wherever four points lie", () => {
    const point = fc.record({ x: fc.integer({ min: 4, max: 316 }), y: fc.integer({ min: 8, max: 100 }) });
    fc.assert(
      fc.property(fc.tuple(point, point, point, point), (points) => {
        const texts = ["requested", "in force", "no program", "least expected cost"];
        const labels = placedLabels(
          points.map((each, index) => ({ ...each, text: texts[index] ?? "" })),
          frame,
        );
        expect(labels.map(({ text }) => text).sort()).toEqual([...texts].sort());
        const spans = labels.map(({ x, y, text, anchor }) => {
          const from = anchor === "start" ? x : x - widthOf(text);
          return { from, to: from + widthOf(text), y };
        });
        for (const [index, one] of spans.entries()) {
          expect(one.to).toBeLessThanOrEqual(frame.right);
          for (const other of spans.slice(index + 1)) {
            const isOver = Math.abs(one.y - other.y) < 10 && one.from < other.to && other.from < one.to;
            expect(isOver).toBe(false);
          }
        }
      }),
    );
  });
});
