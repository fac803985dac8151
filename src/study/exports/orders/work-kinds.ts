/** What an order of some kind of work tells of the study: the time that the work takes, and how long it takes equipment out of service. */
interface WorkKind {
  readonly title: string;
  /** Assumption that a cleaning's hours of work speak to. */
  readonly hours?: string;
  /** Assumption that its hours out of service speak to. */
  readonly outage?: string;
}

export const workNames = [
  "strainer",
  "cooler",
  "orifice",
  "filter",
  "unit",
  "supply",
  "debris",
  "outage",
  "other",
] as const;
export type WorkName = (typeof workNames)[number];

/** Kinds of work whose orders a lake without mussels has as well; each order is taken as one cleaning. */
export const workKinds: Readonly<Record<WorkName, WorkKind>> = {
  strainer: {
    title: "Cleaning a strainer",
    hours: "raw-water.strainer-hours",
    outage: "raw-water.strainer-outage",
  },
  cooler: {
    title: "Cleaning a cooler",
    hours: "raw-water.cooler-hours",
    outage: "raw-water.cooler-outage",
  },
  orifice: { title: "Clearing an orifice", hours: "raw-water.orifice-hours" },
  filter: { title: "Cleaning a filter of a hatchery", hours: "hatchery.filter-time" },
  unit: { title: "Cleaning for which a unit is stopped", outage: "hydropower.outage-days" },
  supply: { title: "Cleaning for which a supply is shut", outage: "supply.outage-days" },
  debris: { title: "Clearing debris from a rack" },
  outage: { title: "Outage for another reason" },
  other: { title: "Other work" },
};

/** Assumption that labor cost over hours speaks to. */
export const hourlyRate = "labour.maintenance-rate";
