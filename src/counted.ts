/**
 * A count with its noun: "1 year", "30 years", "1,200 boats".
 * @param count a number, or its text where it is rounded for print
 */
export function counted(count: number | string, one: string, several = `${one}s`): string {
  const text = typeof count === "number" ? count.toLocaleString("en-US") : count;
  return `${text} ${text === "1" ? one : several}`;
}
