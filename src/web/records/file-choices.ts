import type { FileColumns } from "../../study/exports/proposed-columns.js";

export interface Choice {
  readonly value: string;
  readonly label: string;
}

export const choices = (offered: readonly Choice[], chosen: string) =>
  offered.map((each) => ({ ...each, chosen: each.value === chosen }));

/** The columns of a file with what stands in their first lines. */
export const columnsOffered = (columns: FileColumns | undefined): Choice[] =>
  (columns?.columns ?? []).map(({ name, examples }) => ({
    value: name,
    label: examples.length === 0 ? name : `${name}: ${examples.join(" · ")}`,
  }));

export const orderChoices = (chosen: string) =>
  choices(
    [
      { value: "", label: "As the file shows" },
      { value: "month-first", label: "Month first: 3/4 is 4 March" },
      { value: "day-first", label: "Day first: 3/4 is 3 April" },
    ],
    chosen,
  );

export const decimalChoices = (chosen: string) =>
  choices(
    [
      { value: "", label: "As the file shows" },
      { value: "point", label: "A point: 1,240.5" },
      { value: "comma", label: "A comma: 1.240,5" },
    ],
    chosen,
  );

/** Pages of files, the one that is shown marked. */
export const fileKinds = (study: string, shown: string) =>
  [
    { path: "/records", name: "Lake levels" },
    { path: "/records/boats", name: "Inspected boats" },
    { path: "/records/samples", name: "Samples for mussels" },
    { path: "/records/work", name: "Work orders and outages" },
  ].map(({ path, name }) => ({
    name,
    href: `/studies/${study}${path}`,
    here: path === shown,
  }));
