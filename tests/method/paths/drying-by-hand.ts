import { get, type Lake, monthOf, of, twelve, type Values } from "./lake-by-hand.js";

interface Dose {
  readonly drying: number;
  readonly frost: number;
}

/** Dose of a dry run when the month begins and when it ends; none where nothing dries. */
export type MonthDose = { readonly before: Dose; readonly after: Dose } | undefined;

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
export function dosesOf(dry: readonly boolean[], lake: Lake, drying: Values): MonthDose[] {
  const doses: MonthDose[] = twelve.map(() => undefined);
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

export function survival({ drying: dried, frost }: Dose, length: number, drying: Values): number {
  const size = (Math.max(length, get(drying, "Lmin")) / get(drying, "Lr")) ** get(drying, "xL");
  const [steepness, left] = [get(drying, "κ"), get(drying, "σF")];
  return 1 / (1 + (dried / size) ** steepness) / (1 + frost ** steepness * ((1 - left) / left));
}
