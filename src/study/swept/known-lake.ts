import type { AssumptionSet } from "../../assumptions/entry.js";
import { type WorkedSchedules, workedSchedules } from "../compared/kept-schedules.js";
import type { PreparedStudy } from "../prepare/prepared.js";
import { isAssumption, type Setting } from "./settings.js";

type Lake = WorkedSchedules["known"];

interface Known {
  readonly settings: readonly Setting[];
  /** Assumptions that the lake read. */
  readonly read: ReadonlySet<string>;
  readonly lake: Lake;
}

/** Sections of a study on which neither the lake's levels nor its structures rest. */
const besideLake = /^(boats|options|study)\b/;

/**
 * Works out the lake and its structures of one point after another, and takes those of the point before where nothing
 * that they rest on was set otherwise: most of the work, where only boats or programs differ.
 */
export function lakesInTurn(set: AssumptionSet) {
  let known: Known | undefined;
  return (prepared: PreparedStudy, settings: readonly Setting[]): Lake => {
    const { read, settings: before = [] } = known ?? {};
    const changed = [...notIn(before, settings), ...notIn(settings, before)];
    const isSame = !changed.some((setting) => restsOn(setting, read, set));
    if (known && isSame) return known.lake;
    const { known: lake, ids } = workedSchedules(prepared);
    known = { settings, read: new Set(ids()), lake };
    return lake;
  };
}

const notIn = (others: readonly Setting[], settings: readonly Setting[]): Setting[] =>
  settings.filter(({ id, value }) => !others.some((other) => other.id === id && other.value === value));

const restsOn = (setting: Setting, read: ReadonlySet<string> | undefined, set: AssumptionSet): boolean =>
  isAssumption(setting, set) ? (read?.has(setting.id) ?? true) : !besideLake.test(setting.id);
