/** What a reader has before him: the rendered paths, as numbers. */
export interface PrintedPath {
  readonly title: string;
  readonly intro: string;
  readonly given: ReadonlyMap<string, number>;
  readonly steps: readonly PrintedStep[];
  readonly tables: readonly PrintedTable[];
}

export interface PrintedStep {
  readonly name: string;
  /** Right side with numbers; empty where the value is taken from a table. */
  readonly substitution: string;
  readonly result: string;
}

export interface PrintedTable {
  readonly caption: string;
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

const plain = (html: string): string =>
  html
    .replace(/<sup>(.*?)<\/sup>/g, "^$1")
    .replace(/× 10([⁻⁰¹²³⁴-⁹]+)/g, (_, power: string) => `× 10^${power.normalize("NFKC")}`)
    .replace(/<[^>]+>/g, "")
    .replace(/&#x27;/g, "'")
    .replace(/&#x3D;/g, "=")
    .replace(/&amp;/g, "&")
    .replace(/[\u2060\u202f\u00a0]/g, "")
    .replace(/\s+/g, " ")
    .trim();

/** A printed number: thousands in commas, a true minus, perhaps a power of ten. */
export function numberOf(text: string): number {
  const [mantissa = "", power] = text.replaceAll(",", "").replaceAll("−", "-").split(" × 10^");
  const value = mantissa === "" ? Number.NaN : Number(mantissa);
  return power === undefined ? value : value * 10 ** Number(power);
}

const cellsOf = (row: string): string[] =>
  [...row.matchAll(/<t[dh][^>]*>([\s\S]*?)<\/t[dh]>/g)].map(([, cell = ""]) => cell);
const rowsOf = (table: string): string[] =>
  [...table.matchAll(/<tr[^>]*>([\s\S]*?)<\/tr>/g)].map(([, row = ""]) => row);

function tableOf(html: string): PrintedTable & { readonly raw: readonly (readonly string[])[] } {
  const raw = rowsOf(html).map(cellsOf);
  const [head = [], ...rows] = raw;
  return {
    caption: plain(/<caption[^>]*>([\s\S]*?)<\/caption>/.exec(html)?.[1] ?? ""),
    head: head.map(plain),
    rows: rows.map((row) => row.map(plain)),
    raw: rows,
  };
}

/** Levels stand to the millimetre in the third column, where five figures would tell too little. */
function givenOf(rows: readonly (readonly string[])[]): Map<string, number> {
  return new Map(
    rows.map(([symbol = "", , entered = "", value = ""]) => {
      const level = /: ([\d.]+) m$/.exec(entered)?.[1];
      return [symbol, level === undefined ? numberOf(value) : Number(level)];
    }),
  );
}

function stepOf([name = "", working = "", result = ""]: readonly string[]): PrintedStep {
  const numbers = /class="formula-line numbers">= ([\s\S]*)<\/span>/.exec(working)?.[1] ?? "";
  return { name: plain(name), substitution: rooted(numbers), result: plain(result) };
}

/** A root's line over its radicand is the only bracket that is not printed as one. */
const rooted = (html: string): string => plain(html.replace(/√\s*<span[^>]*>([\s\S]*?)<\/span>/g, "√($1)"));

function pathOf(html: string): PrintedPath {
  const tables = [...html.matchAll(/<table[\s\S]*?<\/table>/g)].map(([table]) => tableOf(table));
  const given = tables.find(({ caption }) => caption === "Given");
  const steps = tables.find(({ caption }) => caption === "Steps");
  return {
    title: plain(/^([\s\S]*?)<\/h4>/.exec(html)?.[1] ?? ""),
    intro: plain(/<p>([\s\S]*?)<\/p>/.exec(html)?.[1] ?? ""),
    given: givenOf(given?.rows ?? []),
    steps: (steps?.raw ?? []).filter((row) => row.length > 1).map(stepOf),
    tables: tables.filter((each) => each !== given && each !== steps),
  };
}

/** The paths of each lake, the first of which has its water. @param html the rendered method */
export function printedPaths(html: string): { lake: string; water: PrintedPath; paths: PrintedPath[] }[] {
  const [, section = ""] = html.split('<h2 id="paths">');
  const [own = ""] = section.split("<h2");
  return own
    .split(/<h3 id="[^"]*">/)
    .slice(1)
    .map((part) => {
      const [lake = "", ...paths] = part.split("<h4>");
      const [water, ...rest] = paths.map(pathOf);
      if (!water) throw new Error(`no water of ${lake}`);
      return { lake: plain(lake.replace(/<\/h3>[\s\S]*/, "")), water, paths: rest };
    });
}

/** A column of a table by the start of its heading. */
export function column(table: PrintedTable | undefined, head: string): number[] {
  const index = table?.head.findIndex((each) => each.startsWith(head)) ?? -1;
  if (!table || index < 0) throw new Error(`no column “${head}”`);
  return table.rows.map((row) => numberOf(row[index] ?? ""));
}

export const hasColumn = (table: PrintedTable | undefined, head: string): boolean =>
  table?.head.some((each) => each.startsWith(head)) ?? false;
