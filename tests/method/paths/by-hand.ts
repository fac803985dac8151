import { dosesOf, type MonthDose, survival } from "./drying-by-hand.js";
import { days, daysIn, densityIn, get, type Lake, monthOf, of, twelve, type Values } from "./lake-by-hand.js";

export interface Place {
  readonly elevation?: number;
  /** Of what floats. */
  readonly depth?: number;
  readonly velocity: readonly number[];
  /** Hours running in each month. */
  readonly hours?: readonly number[];
  readonly emptied?: readonly number[];
}

export interface Month {
  readonly depth: number;
  readonly temperature: number;
  readonly settlers: number;
  readonly warmth: number;
  readonly dose: MonthDose;
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

function dryDays({ elevation, emptied = [] }: Place, { daily }: Lake): boolean[] {
  return Array.from(
    { length: 365 },
    (_, day) =>
      elevation !== undefined &&
      (emptied.includes(monthOf(day)) || (daily.length > 0 && of(daily, day) < elevation)),
  );
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
