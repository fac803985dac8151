/** Puts page numbers in their places, by the ids of what they refer to. */
function putPages(pages: ReadonlyArray<readonly [id: string, page: number]>): void {
  const known = new Map(pages);
  for (const place of document.querySelectorAll<HTMLElement>("[data-page-of]")) {
    place.textContent = String(known.get(place.dataset.pageOf ?? "") ?? "00");
  }
}

/** What reaches beyond the sheet: where it stands and how it begins. */
interface TooWide {
  readonly section: string;
  readonly text: string;
}

/** The first thing that is wider than the sheet; the page is laid out as wide as that, in its style for print. */
function tooWide(width: number): TooWide | undefined {
  if (document.documentElement.scrollWidth <= width) return undefined;
  const all = [...document.querySelectorAll("main *")].filter((each) => !each.closest("svg, .unseen"));
  const wide = all.findLast((each) => each.getBoundingClientRect().right > width + 1);
  if (!wide) return undefined;
  const section = wide.closest("section")?.querySelector("h1, h2")?.textContent ?? "";
  return { section, text: (wide.textContent ?? "").trim().slice(0, 60) };
}

Object.assign(globalThis, { putPages, tooWide });
