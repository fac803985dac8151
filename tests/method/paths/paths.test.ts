import { describe, expect, it } from "vitest";
import { renderMethodBody } from "../../../src/method/method-document.js";
import { pathsOf } from "../../../src/method/paths/paths.js";
import { structureKinds } from "../../../src/model/structures/kinds.js";
import { reportContext } from "../../../src/report/document/context.js";
import { reckon } from "../../report/reckon.js";
import { assumptions, exampleRun } from "../../report/runs.js";
import {
  conditions,
  dailyLevels,
  days,
  densityIn,
  get,
  grow,
  type Lake,
  type Month,
  type Place,
  type Stand,
  twelve,
  type Values,
} from "./by-hand.js";
import { column, hasColumn, numberOf, type PrintedPath, type PrintedTable, printedPaths } from "./printed.js";

/*
 * Everything below is reckoned from the numbers on the rendered page by the relations that the same page states, in
 * arithmetic of its own. Entries and assumptions stand to five figures, so that results agree to about one in ten thousand.
 */
const printed = printedPaths(renderMethodBody(assumptions));
const near = 5e-4;

const expectNear = (found: number, expected: number, what: string, gap = near) =>
  expect(Math.abs(found - expected), `${what}: ${found} for ${expected}`).toBeLessThanOrEqual(
    gap * Math.abs(expected) + 1e-12,
  );

const tableOf = ({ tables }: PrintedPath, start: string): PrintedTable | undefined =>
  tables.find(({ caption }) => caption.startsWith(start));

function lakeOf(water: PrintedPath): Lake {
  const byMonth = tableOf(water, "By month");
  const schedule = tableOf(water, "Levels as entered");
  const points = (schedule?.rows ?? []).map(
    ([day = "", level = ""]) => [numberOf(day), numberOf(level)] as const,
  );
  return {
    given: water.given,
    surface: column(byMonth, "Surface"),
    deep: column(byMonth, "Below"),
    air: column(byMonth, "Air"),
    humidity: column(byMonth, "Humidity"),
    level: column(byMonth, "Mean level"),
    daily: points.length > 0 ? dailyLevels(points) : [],
  };
}

/** The surface of a path, as its page has it. */
function placeOf(path: PrintedPath): Place {
  const table = tableOf(path, "Conditions");
  const hours = hasColumn(table, "Hours") ? { hours: column(table, "Hours") } : {};
  const velocity = column(table, "Velocity");
  const elevation = path.given.get("ze");
  if (elevation === undefined) return { depth: get(path.given, "y"), velocity, ...hours };
  const flow = column(table, "Flow");
  const emptied = path.intro.includes("are empty") ? twelve.filter((month) => flow[month] === 0) : [];
  return { elevation, velocity, ...hours, emptied };
}

interface Layers {
  readonly months: readonly Month[];
  /** The layer of each row that is printed. */
  readonly stands: readonly Stand[];
  readonly rows: PrintedTable;
}

function layersOf(path: PrintedPath, lake: Lake): Layers {
  const rows = tableOf(path, "The layer");
  if (!rows) throw new Error(`${path.title}: no layer`);
  const months = conditions(placeOf(path), lake, path.given);
  const numbers = column(rows, "Month since").map((month) => month - 1);
  const [first = 0] = numbers;
  const bare = new Set(numbers.filter((_, row) => rows.rows[row]?.at(-1) === "made bare"));
  // What is cleaned is bare before its first row; what nobody cleans was bare when the lake was infested.
  const from = bare.size > 0 ? first : 0;
  const stands = grow(
    months,
    { from, to: first + numbers.length, isCleaned: (month) => bare.has(month) },
    lake,
    path.given,
  );
  return { months, stands: stands.slice(first - from), rows };
}

const sum = (list: readonly number[]) => list.reduce((total, each) => total + each, 0);
const closed = ({ cover }: Stand, given: Values) => Math.min(1, cover / get(given, "c1"));

/** Quantity and rate of the line of each kind, from entries alone. */
const lineByHand: Readonly<Record<string, (path: PrintedPath, lake: Lake) => readonly [number, number]>> = {
  intake: rackLine,
  hydropower: rackLine,
  "service-line": (path, lake) => {
    const { given } = path;
    const { stands, rows } = layersOf(path, lake);
    const bare = stands.filter((_, row) => rows.rows[row]?.at(-1) === "made bare");
    const walls = Math.PI * get(given, "D") * get(given, "ℓ") * get(given, "nL");
    return [sum(bare.map(({ mass }) => mass)) * walls * get(given, "σ"), get(given, "cD") + get(given, "pD")];
  },
  dock: (path, lake) => {
    const { given } = path;
    const shares = layersOf(path, lake).stands.map(({ mass }) => Math.min(1, mass / get(given, "M0")));
    return [get(given, "q"), (get(given, "wD") * get(given, "R") * sum(shares)) / 12];
  },
  "lake-wide": ({ given }) => [1, get(given, "u")],
  hatchery: (path, lake) => {
    const { given } = path;
    const hours = get(given, "nF") * get(given, "nC") * get(given, "h");
    return [hours * sum(layersOf(path, lake).stands.map((each) => closed(each, given))), get(given, "u")];
  },
  "pumping-plant": (path, lake) => {
    const { given } = path;
    const flow = column(tableOf(path, "Conditions"), "Flow");
    const plugged = layersOf(path, lake).stands.map((each, month) => {
      const length = each.number > 0 ? Math.sqrt(each.cover / each.number) : 0;
      return flow[month] === 0
        ? 0
        : get(given, "p1") * closed(each, given) * Math.min(1, length / get(given, "bN"));
    });
    return [(get(given, "A") / get(given, "a")) * sum(plugged) * get(given, "h"), get(given, "u")];
  },
  "treatment-plant": ({ given, intro, tables: [table] }, lake) => {
    const year = Number(/in year (\d+)/.exec(intro)?.[1]) - 1;
    const [from, full] = [get(given, "T0"), get(given, "T1")];
    const water = column(table, "Flow treated").map((flow, month) => {
      const algae = Math.min(1, Math.max(0, ((lake.surface[month] ?? Number.NaN) - from) / (full - from)));
      return algae * densityIn(year * 12 + month, lake) * flow * (days[month] ?? 0) * 86_400;
    });
    const [none, whole] = [get(given, "P0"), get(given, "P1")];
    const furthered = Math.min(1, Math.max(0, (none - get(given, "P")) / (none - whole)));
    return [(get(given, "d") / 1000) * furthered * sum(water), get(given, "u")];
  },
  ramp: (path, lake) => {
    const years = rampYears(path, lake);
    const { sweeps = 0, height = 0, ground = 0 } = years.at(-1) ?? {};
    return [sweeps * height * ground, get(path.given, "u")];
  },
};

function rackLine(path: PrintedPath, lake: Lake): readonly [number, number] {
  const { given } = path;
  const [s, b, d] = [get(given, "sb"), get(given, "bb"), get(given, "db")];
  const steel = (2 * get(given, "wR") * get(given, "hR") * (s + d)) / (s + b);
  const mass = layersOf(path, lake).stands.at(-1)?.mass ?? Number.NaN;
  return [mass * steel * get(given, "nU"), get(given, "u")];
}

/** What each year's drawdown leaves on a ramp: twenty cells, low at the bottom of the band, each grown in its middle. */
function rampYears(path: PrintedPath, lake: Lake) {
  const { given } = path;
  const [low, high] = [Math.min(...lake.daily), Math.max(...lake.daily)];
  const years = tableOf(path, "What the drawdown")?.rows.length ?? 0;
  const end = (cell: number) => low + (high - low) * (cell / 20) ** 2;
  const cells = Array.from({ length: 20 }, (_, cell) => {
    const elevation = (end(cell) + end(cell + 1)) / 2;
    const still = conditions({ elevation, velocity: twelve.map(() => 0) }, lake, given);
    const stands = grow(still, { from: 0, to: years * 12 }, lake, given);
    const within = Math.min(get(given, "zt"), end(cell + 1)) - Math.max(get(given, "zb"), end(cell));
    return { within: Math.max(0, within), stands };
  });
  const ground = get(given, "bR") * Math.sqrt(1 + get(given, "mR") ** -2);
  let left = 0;
  return Array.from({ length: years }, (_, year) => {
    const ofCells = cells.map(({ within, stands }) => ({
      within,
      killed: sum(stands.slice(year * 12, year * 12 + 12).map((each) => each.killed)),
    }));
    const killed = sum(ofCells.map((cell) => cell.within * cell.killed));
    const height = sum(ofCells.filter((cell) => cell.killed > 0).map(({ within }) => within));
    const shells = killed * ground * get(given, "σ") * get(given, "g");
    const thickness = shells / (height * ground * get(given, "ρ"));
    const sweeps = Math.floor((left + thickness) / get(given, "t0"));
    left += thickness - sweeps * get(given, "t0");
    return { killed, height, shells, thickness, sweeps, left, ground };
  });
}

const told = pathsOf(assumptions, reportContext);
const cases = printed.flatMap(({ water, paths }, lake) =>
  paths.map((path, index) => [told[lake]?.paths[index]?.kind ?? "", path, lakeOf(water)] as const),
);

describe("a path from entries to a cost line", () => {
  it("is there for each kind of structure", () => {
    expect(cases.map(([kind]) => kind).sort()).toEqual(structureKinds.map(({ kind }) => kind).sort());
  });

  it.each(cases)("ends at the printed line, reckoned from entries alone: %s", (kind, path, lake) => {
    const reckoned = lineByHand[kind];
    if (!reckoned) throw new Error(`no reckoning of ${kind}`);
    const [quantity, rate] = reckoned(path, lake);
    const { result = "" } = path.steps.at(-1) ?? {};
    // The line itself is rounded to the cent.
    expect(Math.abs(quantity * rate - numberOf(result))).toBeLessThanOrEqual(near * quantity * rate + 0.005);
  });

  const sheets = cases.flatMap(([kind, path]) =>
    path.steps
      .filter(({ substitution }) => substitution !== "")
      .map((step) => [`${kind}: ${step.name}`, step] as const),
  );

  it.each(sheets)("follows from the numbers of its step: %s", (_name, { substitution, result }) => {
    const isMoney = /^Cost of the line/.test(_name.replace(/^[^:]+: /, ""));
    const found = numberOf(result);
    expect(Math.abs(reckon(substitution) - found)).toBeLessThanOrEqual(
      2e-4 * Math.abs(found) + (isMoney ? 0.005 : 0),
    );
  });
});

describe("the tables of a path", () => {
  const grown = cases.filter(([, path]) => tableOf(path, "The layer"));

  it.each(grown)("have the conditions of each month: %s", (_kind, path, lake) => {
    const table = tableOf(path, "Conditions");
    const { months } = layersOf(path, lake);
    const bore = path.steps.find(({ name }) => name.includes("V = Q/B"));
    months.forEach((month, index) => {
      expectNear(column(table, "Depth")[index] ?? Number.NaN, month.depth, "depth", 2e-3);
      expectNear(column(table, "Water T")[index] ?? Number.NaN, month.temperature, "temperature");
      expectNear(column(table, "Share of settlers")[index] ?? Number.NaN, month.settlers, "settlers");
      expectNear(column(table, "Degree-days")[index] ?? Number.NaN, month.warmth, "warmth");
      if (!bore) return;
      const flow = column(table, "Flow")[index] ?? Number.NaN;
      expectNear(column(table, "Velocity")[index] ?? Number.NaN, flow / numberOf(bore.result), "velocity");
    });
  });

  it.each(grown)("have the layer of each month: %s", (_kind, path, lake) => {
    const { stands, rows } = layersOf(path, lake);
    column(rows, "Month since").forEach((month, row) => {
      expectNear(column(rows, "Density")[row] ?? Number.NaN, densityIn(month - 1, lake), "density");
      const { number = Number.NaN, cover = Number.NaN, mass = Number.NaN } = stands[row] ?? {};
      // The program forgets a brood of less than one mussel to a square kilometre, 1e-6 to a square metre, of 30 mm at most.
      const apart = (head: string) => column(rows, head)[row] ?? Number.NaN;
      expect(Math.abs(apart("Number") - number)).toBeLessThanOrEqual(near * number + 1e-5);
      expect(Math.abs(apart("Cover") - cover)).toBeLessThanOrEqual(near * cover + 1e-8);
      expect(Math.abs(apart("Mass") - mass)).toBeLessThanOrEqual(near * mass + 4e-8);
    });
  });

  it("have what each drawdown leaves on the ramp", () => {
    const [, path, lake] = cases.find(([kind]) => kind === "ramp") ?? [];
    if (!path || !lake) throw new Error("no ramp");
    const table = tableOf(path, "What the drawdown");
    rampYears(path, lake).forEach(({ killed, height, shells, thickness, sweeps, left }, year) => {
      const inYear = (head: string) => column(table, head)[year] ?? Number.NaN;
      expectNear(inYear("Killed"), killed, "killed", 2e-3);
      expectNear(inYear("Height"), height, "height");
      expectNear(inYear("Shells"), shells, "shells", 2e-3);
      expectNear(inYear("Thickness"), thickness, "thickness", 2e-3);
      expect(inYear("Sweeps")).toBe(sweeps);
      expectNear(inYear("Left"), left, "left", 5e-3);
    });
  });
});

describe("the line at a path's end", () => {
  it("is one of the study's", () => {
    const names = ["sorrel-bend", "copperhithe", "ninemoss"] as const;
    const all = names.map((name) => exampleRun(name).comparison.structures);
    printed.forEach(({ paths }, lake) => {
      for (const { intro, steps } of paths) {
        const [, what = ""] = /line “([^”]+)”/.exec(intro) ?? [];
        const year = Number(/in year (\d+)/.exec(intro)?.[1]) - 1;
        const lines = (all[lake] ?? [])
          .flatMap(({ years }) => years[year] ?? [])
          .filter((line) => line.what === what);
        const cost = numberOf(steps.at(-1)?.result ?? "");
        expect(lines.some(({ cents }) => Math.abs(cents / 100 - cost) <= 5e-5 * cost)).toBe(true);
      }
    });
  });
});
