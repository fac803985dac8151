import { describe, it } from "vitest";
import { type Contradicting, expectContradiction } from "../contradicting.js";

const phase = { what: "Something", starts: 0, lasts: 5, origin: "invented" };
const saying = (one: object, others: object = {}): Contradicting["edits"] => [
  ["report", { found: { suspectedOn: "07-15", phases: [{ ...phase, ...one }], ...others } }],
];
const first = "report.found.phases[0]";

const cases: readonly Contradicting[] = [
  {
    why: "a closure longer than the year",
    edits: saying({ phase: "restriction", lasts: 400 }),
    at: `${first}.lasts`,
    found: "a closure of 400 days",
    allowed: "at most 365 days, a year",
  },
  {
    why: "a treatment of more water than the lake holds",
    edits: saying({ phase: "treatment", volume: "300,000 acre-ft" }),
    at: `${first}.volume`,
    found: "300,000 acre-ft, more water than the lake holds",
    allowed: "at most 288,000 acre-ft",
  },
  {
    why: "water of a phase that treats none",
    edits: saying({ phase: "watch", volume: "10 acre-ft" }, { cleanYears: 3 }),
    at: `${first}.volume`,
    found: "a phase that treats no water, watch",
    allowed: "a treatment only",
  },
  {
    why: "a cost beside the item that has it",
    edits: saying({ phase: "leaving-boats", item: "Permits and reporting", cost: "$5,000" }),
    at: `${first}.cost`,
    found: "$5,000 beside the item",
    allowed: "not both",
  },
  {
    why: "an item that is not there",
    edits: saying({ phase: "leaving-boats", item: "Gatekeepers" }),
    at: `${first}.item`,
    found: '"Gatekeepers"',
    allowed: "the name of a duty or policy of a lake-wide structure",
  },
  {
    why: "an item that is no cost of the comparison",
    edits: saying({ phase: "leaving-boats", item: "Lost visitor spending near the lake" }),
    at: `${first}.item`,
    found: '"Lost visitor spending near the lake"',
    allowed: "the name of a duty or policy",
  },
  {
    why: "a range of a cost that reaches below nothing",
    edits: saying({ phase: "suspicion", cost: "$-100 to $400 to $900" }),
    at: `${first}.cost`,
    found: '"$-100 to $400 to $900"',
    allowed: "at least 0",
  },
  {
    why: "a payer that is not there",
    edits: saying({ phase: "suspicion", cost: "$5,000", payer: "county" }),
    at: `${first}.payer`,
    found: '"county"',
    allowed: "an id from money.bearers",
  },
  {
    why: "a watch without its years",
    edits: saying({ phase: "watch", cost: "$5,000" }),
    at: "report.found.cleanYears",
    found: "nothing, beside a watch",
    allowed: "years without a find",
  },
  {
    why: "two contacts with one id",
    edits: saying(
      { phase: "suspicion" },
      { contacts: [1, 2].map((each) => ({ id: "agency", name: `Agency ${each}`, role: "Leads" })) },
    ),
    at: "report.found.contacts[1].id",
    found: '"agency" a second time',
    allowed: "an id used once",
  },
  {
    why: "a name with a control character",
    edits: saying(
      { phase: "suspicion" },
      { contacts: [{ id: "agency", name: "Agency\u0007", role: "Leads" }] },
    ),
    at: "report.found.contacts[0].name",
    found: "U+0007 at character 7",
    allowed: "characters that can be printed",
  },
];

describe("a plan for the day of the find that cannot be", () => {
  it.each(cases)("is told at its place: $why", expectContradiction);
});
