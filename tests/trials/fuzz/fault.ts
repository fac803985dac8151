/** What a case showed that must not be. */
export interface Fault {
  /** The property that it breaks, in few words. */
  readonly what: string;
  readonly detail: string;
}

/** Longest processor time of a case. Time by the clock would also count what else the machine does. */
export const longestMilliseconds = 2000;

export const processorMilliseconds = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

/** @returns where a number that is none stands in a result */
export function notFinite(value: unknown, path = ""): string | undefined {
  if (typeof value === "number") return Number.isFinite(value) ? undefined : `${path} is ${value}`;
  if (typeof value === "string") return /^-?(NaN|Infinity)$/.test(value) ? `${path} is ${value}` : undefined;
  if (typeof value !== "object" || value === null) return undefined;
  for (const [key, each] of Object.entries(value)) {
    const found = notFinite(each, `${path}.${key}`);
    if (found !== undefined) return found;
  }
  return undefined;
}
