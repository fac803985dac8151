import { conditions, grow, type Month, type Place, type Stand } from "./by-hand.js";
import { dailyLevels, days, densityIn, get, type Lake, twelve, type Values } from "./lake-by-hand.js";
import { column, hasColumn, numberOf, type PrintedPath, type PrintedTable } from "./printed.js";

export const tableOf = ({ tables }: PrintedPath, start: string): PrintedTable | undefined =>
  tables.find(({ caption }) => caption.startsWith(start));

export function lakeOf(water: PrintedPath): Lake {
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

export function layersOf(path: PrintedPath, lake: Lake): Layers {
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
export const lineByHand: Readonly<
  Record<string, (path: PrintedPath, lake: Lake) => readonly [number, number]>
> = {
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
export function rampYears(path: PrintedPath, lake: Lake) {
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
