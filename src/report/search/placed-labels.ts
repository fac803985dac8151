/** Words beside a point of a picture, and the place that they take, which lines under them leave free. */
export interface PlacedLabel extends Line {
  readonly from: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

interface Line {
  readonly x: number;
  readonly y: number;
  readonly text: string;
  readonly anchor: "start" | "end";
}

interface Labelled {
  readonly x: number;
  readonly y: number;
  readonly text: string;
}

interface Frame {
  readonly right: number;
  readonly top: number;
  readonly base: number;
}

const letterWidth = 5;
const lineHeight = 10;
const gap = 6;
/** Height of letters above the line that they stand on. */
const above = 8;
/** From a point to the foot of letters that stand level with it. */
const lowerBy = 3;

const numbered = (count: number) => Array.from({ length: count }, (_, index) => index);

/** Each label beside its point, on the side on which there is room, and moved up or down where another is in the way. */
export function placedLabels(points: readonly Labelled[], frame: Frame): PlacedLabel[] {
  const placed: Line[] = [];
  for (const { x, y, text } of [...points].sort((one, other) => one.y - other.y)) {
    const width = text.length * letterWidth;
    const anchor = x + gap + width > frame.right ? "end" : "start";
    const at = anchor === "start" ? x + gap : x - gap;
    const own = Math.round(y) + lowerBy;
    const lines = numbered(frame.base - frame.top + 1)
      .map((line) => frame.top + line)
      .sort((one, other) => Math.abs(one - own) - Math.abs(other - own));
    const label = (line: number): Line => ({ x: at, y: line, text, anchor });
    const free = lines.map(label).find((each) => placed.every((other) => !overlap(each, other)));
    placed.push(free ?? label(own));
  }
  return placed.map(withPlace);
}

function withPlace(label: Line): PlacedLabel {
  const [from, to] = spanOf(label);
  return { ...label, from, top: label.y - above, width: to - from, height: lineHeight };
}

function overlap(one: Line, other: Line): boolean {
  const [from, to] = spanOf(one);
  const [otherFrom, otherTo] = spanOf(other);
  return Math.abs(one.y - other.y) < lineHeight && from < otherTo && otherFrom < to;
}

function spanOf({ x, text, anchor }: Line): readonly [number, number] {
  const width = text.length * letterWidth;
  return anchor === "start" ? [x, x + width] : [x - width, x];
}
