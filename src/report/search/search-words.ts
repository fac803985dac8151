import type { ProgramSearch, SearchPoint } from "../../study/search/result.js";
import { significant } from "../words/format.js";

const hour = (value: number) =>
  `${Math.floor(value)}:${String(Math.round((value % 1) * 60)).padStart(2, "0")}`;

const monthNames = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

/** What a program of the search has open, and what it has otherwise than the option that it starts from. */
export function programWords({
  open,
  months,
  measures,
}: Pick<SearchPoint, "open" | "months" | "measures">): string {
  const parts = [...openWords(open), ...monthWords(months), ...measures.map(({ name }) => name)];
  return parts.join("; ");
}

function openWords(open: SearchPoint["open"]): string[] {
  if (!open) return [];
  if (open.length === 0) return ["no station open"];
  const sites = [...new Set(open.map(({ siteName }) => siteName))];
  return sites.map((site) => {
    const days = open
      .filter(({ siteName }) => siteName === site)
      .map(({ name, from, to, inspectors }) => {
        const people = inspectors > 1 ? `, ${inspectors} inspectors` : "";
        return `${name} ${hour(from)}–${hour(to)}${people}`;
      });
    return `${site}: ${days.join(", ")}`;
  });
}

function monthWords(months: SearchPoint["months"]): string[] {
  if (!months) return [];
  return [months.length === 0 ? "no month" : months.map((month) => monthNames[month]).join(", ")];
}

/** Places of the programs of the frontier, A, B, …, by their ids. */
export function lettersOf({ frontier }: Pick<ProgramSearch, "frontier">): ReadonlyMap<string, string> {
  return new Map(frontier.map(({ id }, index) => [id, letter(index)]));
}

const letter = (index: number): string =>
  (index >= 26 ? letter(Math.floor(index / 26) - 1) : "") + String.fromCharCode(65 + (index % 26));

export const hoursText = (hours: number | undefined): string =>
  hours === undefined ? "–" : significant(hours, 4);
