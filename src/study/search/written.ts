import { deterredShare, feesOf, type Measure } from "../../model/search/variant.js";
import type { SearchPoint } from "./result.js";

type Raw = Readonly<Record<string, unknown>>;

/** A program of a search as an option that its author might have typed, after the option that it starts from. */
export function writtenOption(
  base: Raw,
  point: SearchPoint,
  names: { readonly id: string; readonly name: string; readonly lumpShare: number },
): Raw {
  const { measures, hoursShare, open, coverageShare } = point;
  const left = deterredShare(coverageShare, 1);
  const without = new Set(measures.flatMap(({ leaves }) => leaves));
  const stays = (line: Raw) => !without.has(String(line.group ?? ""));
  const { open: _, description: __, ...others } = base;
  const yearly = rows(base.yearly).filter(stays);
  const staff = rows(base.staff);
  const wagesApart = staff.some(isStaffWages) || yearly.some(({ group }) => group === "wages");
  const lump = 1 - names.lumpShare + names.lumpShare * hoursShare;
  return {
    ...others,
    id: names.id,
    name: names.name,
    description: `Found by the search, from “${String(base.name)}”.`,
    steps: stepsOf(group(base.steps), { measures, coverageShare, left, isByHours: open !== undefined }),
    ...(open ? { open: open.map(openEntry) } : {}),
    staff: staff.map(({ people: ___, ...line }) =>
      isStaffWages(line) ? { ...line, hoursPerYear: plain(Number(line.hoursPerYear) * hoursShare) } : line,
    ),
    equipment: rows(base.equipment).filter(stays),
    yearly: [
      ...yearly.map((line) => {
        const share = wagesApart ? (line.group === "wages" ? hoursShare : 1) : lump;
        return line.cost === undefined ? line : { ...line, cost: scaled(line.cost, share) };
      }),
      ...measures.flatMap(({ name, cost }) => (cost === undefined ? [] : [{ name, cost }])),
    ],
    fees: rows(base.fees).map((line) => ({
      ...line,
      fee: scaled(line.fee, feesOf(measures)),
      countPerYear: plain(Number(line.countPerYear) * left),
      ...(line.payers === undefined ? {} : { payers: plain(Number(line.payers) * left) }),
    })),
  };
}

const isStaffWages = ({ group: of }: Raw) => (of ?? "wages") === "wages";

const group = (value: unknown): Raw => (typeof value === "object" && value !== null ? { ...value } : {});

const rows = (value: unknown): Raw[] => (Array.isArray(value) ? value.map(group) : []);

function openEntry({ site, dayType, from, to }: NonNullable<SearchPoint["open"]>[number]): Raw {
  const hours = { dayTypes: [dayType], from: timeText(from), to: timeText(to) };
  return site === wholeLake ? hours : { ...hours, sites: [site] };
}

/** The site of a study that names none. */
const wholeLake = "lake";

const timeText = (hour: number) => {
  const minutes = Math.round(hour * 60);
  const two = (value: number) => String(value).padStart(2, "0");
  return `${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`;
};

function stepsOf(
  steps: Raw,
  {
    measures,
    coverageShare,
    left,
    isByHours,
  }: { measures: readonly Measure[]; coverageShare: number; left: number; isByHours: boolean },
): Raw {
  const set: Record<string, unknown> = { ...steps };
  if (!isByHours) set.coverage = scaled(steps.coverage, coverageShare);
  for (const { withoutSeals, withoutWash, steps: own } of measures) {
    if (withoutSeals) set.seals = [];
    if (withoutWash) {
      set.hotWash = "0 %";
      set.byClass = rows(set.byClass).map((each) =>
        each.hotWash === undefined ? each : { ...each, hotWash: "0 %" },
      );
    }
    for (const [step, value] of Object.entries(own ?? {}))
      set[step] = typeof value === "object" ? { share: value.share, days: `${plain(value.days)} d` } : value;
  }
  if (set.deterrence !== undefined) set.deterrence = scaled(set.deterrence, left);
  return set;
}

const plain = (value: number): number => Number(value.toPrecision(14));

/** Numbers of a quantity's text; those in brackets and percentages after ± are shares of their own. */
const number = /\([^)]*\)|±\s*[\d.,]+\s*%\s*$|\d[\d,]*(?:\.\d+)?(?:e[-+]?\d+)?/gi;

/** A quantity as written, times a share: every number of its range. */
export function scaled(written: unknown, share: number): unknown {
  if (share === 1 || written === undefined) return written;
  if (typeof written === "number") return plain(written * share);
  return String(written).replace(number, (part) =>
    /^[\d]/.test(part) ? String(plain(Number(part.replaceAll(",", "")) * share)) : part,
  );
}
