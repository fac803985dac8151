/** What a mapping says, without lists and words that are empty: the study's text is read by people. */
export const saidMapping = (mapping: object): object =>
  Object.fromEntries(
    Object.entries(mapping).filter(
      ([, value]) => value !== undefined && (typeof value !== "object" || Object.keys(value).length > 0),
    ),
  );
