interface Sheet {
  readonly width: number;
  readonly height: number;
}

/** CSS pixels left free at the foot of a sheet, should a line in print be a little higher than measured. */
const spare = 16;
/** Share of a sheet that a table may begin down; below that it begins on the next. */
const lowestStart = 0.6;
/** Share of a sheet that may stay empty so that a group of rows is not torn. */
const mostEmpty = 0.2;
/** Share of a sheet that a group with a sum of its own may take in a table that flows without sums carried. */
const highestFlowing = 0.5;

/**
 * Ends pages within long tables where their rows say that they may, with the sums so far carried forward and, on
 * the next page, brought forward. The page is laid out as wide as the sheet, in its style for print, so that rows
 * have the heights that they print with.
 */
function carryTotals({ height }: Sheet): void {
  for (const table of document.querySelectorAll<HTMLTableElement>("table[data-carries]:not(.whole)")) {
    carry(table, height - spare);
  }
}

function carry(table: HTMLTableElement, height: number): void {
  const columns = (table.dataset.carries ?? "").split(" ").map(Number);
  const rows = [...table.querySelectorAll<HTMLTableRowElement>("tbody tr")];
  const [first] = rows;
  const last = rows.at(-1);
  if (!first || !last) return;
  const down = placeOnSheet(table);
  if (down === Number.POSITIVE_INFINITY && isSummedByGroup(table, height * highestFlowing)) return;
  const start = down > height * lowestStart ? 0 : down;
  if (start + bottomOf(last) - topOf(table) <= height) return;
  if (start !== down) table.parentElement?.classList.add("on-new-page");
  const pattern = carriedRow("Brought forward", columns, last, []);
  last.after(pattern);
  const [rowHeight, headHeight] = [pattern.offsetHeight, table.tHead?.offsetHeight ?? 0];
  const ends = pageEnds(rows, {
    first: height - start - (topOf(first) - topOf(table)) - rowHeight,
    others: height - headHeight - 2 * rowHeight,
  });
  pattern.remove();
  for (const [end, next] of ends) breakBetween(end, next, columns, last);
}

type Ends = Array<readonly [end: HTMLTableRowElement, next: HTMLTableRowElement]>;

/** Where pages end: as far down as rows fit, or somewhat higher where a group of rows ends there. */
function pageEnds(rows: readonly HTMLTableRowElement[], room: { first: number; others: number }): Ends {
  const ends: Ends = [];
  let start = 0;
  let left = room.first;
  for (;;) {
    const top = rows[start];
    if (!top) return ends;
    const fitting = rows.slice(start).filter((row) => bottomOf(row) - topOf(top) <= left);
    const next = start + fitting.length;
    if (next >= rows.length) return ends;
    const possible = fitting.filter((row) => row.dataset.sums !== undefined);
    const lowest = possible.at(-1);
    if (!lowest) return ends;
    const groupEnd = possible.findLast((row) => row === row.parentElement?.lastElementChild);
    const isNear = groupEnd && bottomOf(lowest) - bottomOf(groupEnd) < room.others * mostEmpty;
    const end = isNear ? groupEnd : lowest;
    start = rows.indexOf(end) + 1;
    const following = rows[start];
    if (following) ends.push([end, following]);
    left = room.others;
  }
}

/** Pixels from the head of the sheet on which the table's section, or the first appendix, begins; infinite if unknown. */
function placeOnSheet(table: HTMLElement): number {
  const first = table.closest("section.new-page, .appendices.on-new-page > section:first-child");
  return first ? topOf(table) - topOf(first) : Number.POSITIVE_INFINITY;
}

/** Whether each group ends with its own sum and is so low that it need not be torn: pages then end between groups. */
function isSummedByGroup(table: HTMLTableElement, highest: number): boolean {
  const groups = [...table.querySelectorAll<HTMLElement>("tbody.together")];
  return (
    groups.length > 1 &&
    groups.slice(0, -1).every(({ lastElementChild: last }) => isLastOfGroup(last)) &&
    groups.every((group) => group.offsetHeight <= highest)
  );
}

const isLastOfGroup = (row: Element | null): boolean => row instanceof HTMLElement && row.dataset.sums === "";

function breakBetween(
  end: HTMLTableRowElement,
  next: HTMLTableRowElement,
  columns: readonly number[],
  last: HTMLTableRowElement,
): void {
  const sums = end.dataset.sums ? end.dataset.sums.split("|") : [];
  if (sums.length === 0) {
    next.classList.add("on-new-page");
    return;
  }
  end.after(carriedRow("Carried forward", columns, last, sums));
  const brought = carriedRow("Brought forward", columns, last, sums);
  brought.classList.add("on-new-page");
  next.before(brought);
}

/** A row with a name up to the first of the columns, and from there on the cells of another with sums in those columns. */
function carriedRow(
  name: string,
  columns: readonly number[],
  like: HTMLTableRowElement,
  sums: readonly string[],
): HTMLTableRowElement {
  const row = document.createElement("tr");
  row.className = "carried";
  const label = document.createElement("th");
  label.scope = "row";
  label.colSpan = Math.min(...columns);
  label.textContent = name;
  row.append(label);
  for (const [column, { className }] of [...like.cells].entries()) {
    if (column < label.colSpan) continue;
    const own = document.createElement("td");
    own.className = className;
    own.textContent = sums[columns.indexOf(column)] ?? "";
    row.append(own);
  }
  return row;
}

const topOf = (element: Element): number => element.getBoundingClientRect().top;
const bottomOf = (element: Element): number => element.getBoundingClientRect().bottom;

Object.assign(globalThis, { carryTotals });
