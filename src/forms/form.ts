/** Groups of forms, in the order in which they are listed. */
export const formGroups = ["For a meeting", "For a spreadsheet", "Tables", "Charts"] as const;

/** A study's answer in another form than the report. */
export interface Form {
  /** Also its place in a folder: "tables/budget.csv". */
  readonly path: string;
  readonly group: (typeof formGroups)[number];
  readonly title: string;
  readonly type: string;
  readonly bytes: Uint8Array;
}
