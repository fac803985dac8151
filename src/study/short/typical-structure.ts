import { valueAt } from "../reading/problems.js";
import type { TypicalValues } from "./filling.js";
import { fullStudy } from "./full-study.js";
import { readFacts } from "./read-facts.js";

/** A structure filled up with typical values, and which of its values are typical, by their places in it. */
interface TypicalStructure {
  readonly value: object;
  readonly typical: Readonly<Record<string, string>>;
}

/** Kinds of which there are typical values. */
export const typicalKinds: readonly string[] = ["intake", "hydropower", "dock", "ramp"];

/** What is typical of a structure of a study, unfinished as both may be. @returns nothing for other kinds */
export function typicalStructure(
  document: unknown,
  structure: unknown,
  values: TypicalValues,
): TypicalStructure | undefined {
  const kind = String(valueAt(structure, ["kind"]));
  if (!typicalKinds.includes(kind)) return undefined;
  const writing = writingFacts(document);
  const wanted = structureFacts(kind, structure);
  const tries = [
    { ...writing, ...levelFacts(document), ...wanted },
    { ...writing, ...wanted },
    structureFacts(kind, undefined),
  ];
  const facts = tries.map((each) => readFacts(each, values).facts).find((each) => each !== undefined);
  if (!facts) return undefined;
  const whole = fullStudy(facts, values, anyDay);
  const structures = valueAt(whole, ["structures"]);
  const found = Array.isArray(structures)
    ? structures.find((each: unknown) => valueAt(each, ["kind"]) === kind)
    : undefined;
  if (typeof found !== "object" || found === null) return undefined;
  const place = `structures/${String(valueAt(found, ["id"]))}/`;
  const marks = Object.entries(Object(valueAt(whole, ["study", "typical"])))
    .filter(([each]) => each.startsWith(place))
    .map(([each, entry]) => [each.slice(place.length), String(entry)] as const);
  return { value: found, typical: Object.fromEntries(marks) };
}

/** Of a structure nothing depends on it. */
const anyDay = "2000-01-01";

function writingFacts(document: unknown): object {
  const currency = valueAt(document, ["money", "currency"]);
  const units = valueAt(document, ["study", "units"]) === "si" ? "si" : "us";
  if (currency === undefined || currency === "USD") return { units };
  return { units, currency, exchangeRate: valueAt(document, ["money", "exchangeRate"]) };
}

const levelFacts = (document: unknown): object => ({
  summerLevel: valueAt(document, ["lake", "maximumElevation"]),
  winterLevel: valueAt(document, ["lake", "minimumElevation"]),
});

function structureFacts(kind: string, structure: unknown): object {
  return { ramps: 1, intakes: [], ...factsOfKind[kind]?.(structure) };
}

/** What a short study says of one structure of a kind; of others nothing. */
const factsOfKind: Readonly<Record<string, (structure: unknown) => object>> = {
  hydropower: (structure) => ({ plant: { units: valueAt(structure, ["units"]) ?? 1 } }),
  intake: intakeFacts,
};

function intakeFacts(structure: unknown): object {
  const use = valueAt(structure, ["supply", "by"]) === "gravity" ? "irrigation" : "town";
  const [pipe, length] = ["diameter", "length"].map((key) => valueAt(structure, ["conduit", key]));
  return { intakes: [{ use, pipe, length }] };
}
