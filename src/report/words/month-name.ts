const anyYear = 2001;
const format = new Intl.DateTimeFormat("en-US", { month: "long", timeZone: "UTC" });

/** The name of a month, 0 for January. */
export const monthName = (month: number): string => format.format(new Date(Date.UTC(anyYear, month)));
