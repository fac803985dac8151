/** Reads an assumption's value in the unit stated in its entry; throws if no such entry exists. */
export type Assumed = (id: string) => number;

export interface Recorder {
  readonly assumed: Assumed;
  /** Ids read through this recorder, in order of first reading. */
  readonly ids: () => string[];
}

/** Wraps a reader so that a cost line can name the assumptions behind it. */
export function recorder(source: Assumed): Recorder {
  const used = new Set<string>();
  return {
    assumed: (id) => {
      used.add(id);
      return source(id);
    },
    ids: () => [...used],
  };
}
