/** What a line of a program pays for, in the order in which reports show it. */
export const costGroups = [
  "wages",
  "supervision",
  "training",
  "supplies",
  "seals",
  "monitoring",
  "laboratory",
  "outreach",
  "administration",
  "hot-wash",
  "vehicles",
  "site-works",
  "equipment",
  "other",
] as const;
export type CostGroup = (typeof costGroups)[number];

/** Revenue stands apart from the groups of cost, after them. */
const revenueGroups = ["other-revenue", "fees"] as const;
export type LineGroup = CostGroup | (typeof revenueGroups)[number];

const groups: readonly LineGroup[] = [...costGroups, ...revenueGroups];

export interface Grouped<Line> {
  readonly group: LineGroup;
  readonly lines: readonly Line[];
}

/** Lines by group in the order of reports, without groups that have none; each line stands in one of them. */
export function byGroup<Line extends { readonly group: LineGroup }>(lines: readonly Line[]): Grouped<Line>[] {
  return groups.flatMap((group) => {
    const own = lines.filter((line) => line.group === group);
    return own.length === 0 ? [] : [{ group, lines: own }];
  });
}
