/** A set of own values that stands beside the studies of an agency. */
export const agencyFile = "agency.yaml";

/** Own values of an agency, for all its studies that have none of their own. */
export interface AgencySet {
  readonly name: string;
  readonly version: string;
  readonly values: readonly OwnValue[];
}

interface OwnValue {
  readonly id: string;
  readonly value: string | number;
  readonly reason: string;
}

/** A study's own values, and after them those of the agency for what the study says nothing about. */
export function withAgency(own: readonly OwnValue[], agency: AgencySet | undefined): readonly OwnValue[] {
  if (!agency) return own;
  const ids = new Set(own.map(({ id }) => id));
  const { name, version, values } = agency;
  const others = values.filter(({ id }) => !ids.has(id));
  return [
    ...own,
    ...others.map((each) => ({ ...each, reason: `${each.reason} (values of ${name}, version ${version})` })),
  ];
}
