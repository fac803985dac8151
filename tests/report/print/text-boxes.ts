import { getDocumentProxy } from "unpdf";
import { z } from "zod";

/** What a PDF tells of a piece of text: where it stands on its page, in points. */
const piece = z.object({
  str: z.string(),
  transform: z.array(z.number()).length(6),
  width: z.number(),
});

interface Box {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

function boxOf(item: unknown): Box[] {
  const read = piece.safeParse(item);
  if (!read.success || read.data.str.trim() === "") return [];
  const { str, transform, width } = read.data;
  const [, turned = 0, c = 0, d = 0, x = 0, y = 0] = transform;
  // Axis titles are set upright; nothing stands across them.
  return turned === 0 ? [{ text: str, x, y, width, height: Math.hypot(c, d) }] : [];
}

/** Points by which two texts must run into each other to be seen. */
const seen = 1.5;

const overlap = (one: Box, other: Box): boolean =>
  Math.abs(one.y - other.y) < 0.55 * Math.min(one.height, other.height) &&
  Math.min(one.x + one.width, other.x + other.width) - Math.max(one.x, other.x) > seen;

/** Texts of a PDF that run into each other, with the number of their page. */
export async function brokenTexts(pdf: Uint8Array): Promise<string[]> {
  const document = await getDocumentProxy(pdf.slice());
  const broken: string[] = [];
  for (let number = 1; number <= document.numPages; number++) {
    const page = await document.getPage(number);
    const { items } = await page.getTextContent();
    const boxes = items.flatMap(boxOf);
    for (const [place, box] of boxes.entries()) {
      const other = boxes.slice(place + 1).find((each) => overlap(box, each));
      if (other) broken.push(`${number}: ${box.text} | ${other.text}`);
    }
  }
  return broken;
}
