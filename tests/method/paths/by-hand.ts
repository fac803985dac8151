/**
 * The relations of the method document for a layer on a surface, written from that document alone: nothing of the program
 * is imported. All numbers are read from the printed page.
 */
export type Values = ReadonlyMap<string, number>;

export const days = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
export const twelve = days.map((_, month) => month);

export interface Lake {
  readonly given: Values;
  readonly surface: readonly number[];
  readonly deep: readonly number[];
  readonly air: readonly number[];
  readonly humidity: readonly number[];
  /** Mean level of each month. */
  readonly level: readonly number[];
  /** Level of each day; none where the page has a record's means alone. */
  readonly daily: readonly number[];
}

export const get = (values: Values, symbol: string): number => {
  const value = values.get(symbol);
  if (value === undefined) throw new Error(`“${symbol}” is not printed`);
  return value;
};

const of = (list: readonly number[], index: number): number => list[index] ?? Number.NaN;

/** Straight lines between the points of a schedule, the last to the first. */
export function dailyLevels(points: readonly (readonly [day: number, level: number])[]): number[] {
  return Array.from({ length: 365 }, (_, day) => {
    const after = points.find(([at]) => at > day) ?? points[0];
    const before = points.filter(([at]) => at <= day).at(-1) ?? points.at(-1);
    if (!after || !before) return Number.NaN;
    const span = (after[0] - before[0] + 365) % 365 || 365;
    return before[1] + ((after[1] - before[1]) * ((day - before[0] + 365) % 365)) / span;
  });
}

/** Density over capacity times suitability in the middle of a month since establishment. */
export function densityIn(month: number, { given }: Lake): number {
  const [w, s, p, peak] = [get(given, "w"), get(given, "s0"), get(given, "p"), get(given, "T")];
  const [later, over] = [get(given, "q"), get(given, "yd")];
  const rate = (Math.log((1 - s) / s) + Math.log(p / (1 - p))) / peak;
  const at = (t: number) => {
    const grown = 1 / (1 + (Math.exp(-rate * t) * (1 - s)) / s);
    return grown * (1 - (1 - later) * Math.min(1, Math.max(0, (t - peak) / over)));
  };
  const share = at((month + 0.5) / 12);
  return w * (Math.abs(share - later) < 1e-4 ? later : share);
}

export interface Place {
  readonly elevation?: number;
  /** Of what floats. */
  readonly depth?: number;
  readonly velocity: readonly number[];
  /** Hours running in each month. */
  readonly hours?: readonly number[];
  readonly emptied?: readonly number[];
}

interface Dose {
  readonly drying: number;
  readonly frost: number;
}

export interface Month {
  readonly depth: number;
  readonly temperature: number;
  readonly settlers: number;
  readonly warmth: number;
  /** Dose of a dry run when the month begins and when it ends; none where nothing dries. */
  readonly dose: { readonly before: Dose; readonly after: Dose } | undefined;
}

const falling = (value: number, full: number, none: number) =>
  Math.min(1, Math.max(0, (none - value) / (none - full)));

/** @param drying what the page gives for a surface that dries */
export function conditions(place: Place, lake: Lake, drying: Values): Month[] {
  const { given } = lake;
  const dry = dryDays(place, lake);
  const doses = dosesOf(dry, lake, drying);
  return twelve.map((month) => {
    const depth = place.depth ?? Math.max(0, of(lake.level, month) - (place.elevation ?? 0));
    const temperature = of(depth <= get(given, "yt") ? lake.surface : lake.deep, month);
    const running = place.hours ? of(place.hours, month) / (of(days, month) * 24) : 1;
    const fresh = Math.min(1, running * get(given, "d"));
    const wet = 1 - daysIn(month).filter((day) => dry[day]).length / of(days, month);
    const isSeason =
      of(lake.surface, month) >= get(given, "Ts") && of(lake.surface, month) <= get(given, "Tu");
    const settlers =
      (isSeason ? 1 : 0) *
      falling(depth, get(given, "y1"), get(given, "y0")) *
      falling(of(place.velocity, month), get(given, "V1"), get(given, "V0")) *
      fresh *
      wet;
    const warmth = of(days, month) * Math.max(0, temperature - get(given, "Tb")) * fresh * wet;
    return { depth, temperature, settlers, warmth, dose: doses[month] };
  });
}

const startOf = (month: number) => days.slice(0, month).reduce((sum, each) => sum + each, 0);
const daysIn = (month: number) => Array.from({ length: of(days, month) }, (_, day) => startOf(month) + day);
const monthOf = (day: number) => twelve.findLast((month) => startOf(month) <= day % 365) ?? 0;

function dryDays({ elevation, emptied = [] }: Place, { daily }: Lake): boolean[] {
  return Array.from(
    { length: 365 },
    (_, day) =>
      elevation !== undefined &&
      (emptied.includes(monthOf(day)) || (daily.length > 0 && of(daily, day) < elevation)),
  );
}

/** Dry days in a row, over New Year too. */
function runsOf(dry: readonly boolean[]): number[][] {
  const firstWet = Math.max(0, dry.indexOf(false));
  const runs: number[][] = [];
  for (let step = 0; step < 365; step++) {
    const day = (firstWet + step) % 365;
    if (!dry[day]) continue;
    const last = runs.at(-1);
    if (last?.at(-1) === (day + 364) % 365) last.push(day);
    else runs.push([day]);
  }
  return runs;
}

/** Of the runs in a month the one with the largest dose in it. */
function dosesOf(dry: readonly boolean[], lake: Lake, drying: Values): (Month["dose"] | undefined)[] {
  const doses: (Month["dose"] | undefined)[] = twelve.map(() => undefined);
  for (const run of runsOf(dry)) {
    let after: Dose = { drying: 0, frost: 0 };
    for (const [index, day] of run.entries()) {
      const month = monthOf(day);
      const isFirst = index === 0 || monthOf(run[index - 1] ?? 0) !== month;
      if (!isFirst) continue;
      const before = after;
      const length = run.slice(index).findIndex((each) => monthOf(each) !== month);
      after = added(before, 24 * (length < 0 ? run.length - index : length), month, lake, drying);
      const known = doses[month];
      if (!known || after.drying - before.drying >= known.after.drying - known.before.drying)
        doses[month] = { before, after };
    }
  }
  return doses;
}

const deficit = (temperature: number, humidity: number) =>
  0.6112 * Math.exp((17.62 * temperature) / (243.12 + temperature)) * (1 - humidity);

function added(dose: Dose, hours: number, month: number, lake: Lake, drying: Values): Dose {
  const air = of(lake.air, month);
  const reference = get(drying, "Tr");
  const lost = (temperature: number, humidity: number) =>
    deficit(temperature, humidity) + get(drying, "β") * get(drying, "Q") ** ((temperature - reference) / 10);
  const half =
    (get(drying, "h0") * get(drying, "qs") * lost(reference, get(drying, "Hr"))) /
    lost(air, of(lake.humidity, month));
  const frost = hours / (frostHours(air, drying) * get(drying, "uF"));
  return { drying: dose.drying + hours / half, frost: dose.frost + frost };
}

const frostRows = [
  [0, "h1"],
  [-1.5, "h2"],
  [-3, "h3"],
  [-10, "h4"],
] as const;

function frostHours(air: number, drying: Values): number {
  const [mildest] = frostRows;
  if (air > mildest[0]) return Number.POSITIVE_INFINITY;
  for (let row = 0; row < frostRows.length - 1; row++) {
    const [milder, harder] = [frostRows[row] ?? mildest, frostRows[row + 1] ?? mildest];
    if (air > harder[0]) {
      const [one, two] = [Math.log(get(drying, milder[1])), Math.log(get(drying, harder[1]))];
      return Math.exp(one + ((two - one) * (milder[0] - air)) / (milder[0] - harder[0]));
    }
  }
  return get(drying, "h4");
}

function survival({ drying: dried, frost }: Dose, length: number, drying: Values): number {
  const size = (Math.max(length, get(drying, "Lmin")) / get(drying, "Lr")) ** get(drying, "xL");
  const [steepness, left] = [get(drying, "κ"), get(drying, "σF")];
  return 1 / (1 + (dried / size) ** steepness) / (1 + frost ** steepness * ((1 - left) / left));
}

export interface Stand {
  readonly number: number;
  readonly cover: number;
  readonly mass: number;
  readonly killed: number;
}

interface Brood {
  number: number;
  length: number;
  age: number;
}

/**
 * Month after month in the order of the method: the dry run kills, the living thin out and grow, settlers take their share of
 * the free space, crowding sheds.
 * @param isCleaned true for a month after which the surface is bare
 */
export function grow(
  year: readonly Month[],
  { from, to, isCleaned = () => false }: { from: number; to: number; isCleaned?: (month: number) => boolean },
  lake: Lake,
  drying: Values,
): Stand[] {
  const { given } = lake;
  const massOf = (length: number) => Math.exp(get(given, "a") + get(given, "b") * Math.log(length)) / 1000;
  const living = Math.exp(-(get(given, "m1") * get(given, "w") ** -get(given, "x")) / 12);
  const most = get(given, "cmax");
  let broods: Brood[] = [];
  const stands: Stand[] = [];
  for (let month = from; month < to; month++) {
    const { settlers, warmth, dose } = year[month % 12] as Month;
    let killed = 0;
    for (const brood of broods) {
      const before = brood.length;
      brood.age += 1;
      if (brood.age < 84)
        brood.length =
          get(given, "Lmax") - (get(given, "Lmax") - before) * Math.exp(-get(given, "k") * warmth);
      if (dose) {
        const met = dose.before.drying === 0 ? brood.length : before;
        const alive = brood.number * (survival(dose.after, met, drying) / survival(dose.before, met, drying));
        killed += (brood.number - alive) * massOf(met);
        brood.number = alive;
      }
      brood.number *= living;
    }
    const coverOf = () => broods.reduce((sum, { number, length }) => sum + number * (length / 1000) ** 2, 0);
    const crowded = coverOf() / most;
    const come = get(given, "n") * densityIn(month, lake) * settlers * Math.max(0, 1 - crowded);
    if (come > 0) broods.push({ number: come, length: get(given, "L0"), age: 0 });
    if (crowded > 1) for (const brood of broods) brood.number /= crowded;
    stands.push({
      number: broods.reduce((sum, brood) => sum + brood.number, 0),
      cover: coverOf(),
      mass: broods.reduce((sum, brood) => sum + brood.number * massOf(brood.length), 0),
      killed,
    });
    if (isCleaned(month)) broods = [];
  }
  return stands;
}
