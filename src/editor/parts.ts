import type { Problem } from "../study/reading/problems.js";
import { type GroupField, type NamedField, studyFields } from "./fields.js";

/** A part of a study with its own page: fields of one section, in page order. */
export interface StudyPart {
  readonly id: PartId;
  /** Section of the study file. */
  readonly section: string;
  /** Keys of the section; none for a list, which is shown whole. */
  readonly keys: readonly string[];
  /** Guidance on how to begin. */
  readonly guide: readonly string[];
}

const partIds = ["names", "lake", "levels", "money", "structures", "boats", "options", "printed"] as const;
export type PartId = (typeof partIds)[number];

export const studyParts: readonly StudyPart[] = [
  {
    id: "names",
    section: "study",
    keys: [
      ...["name", "authority", "board", "prepared", "preparedBy", "units", "requestedOption"],
      ...["existingOption", "invented", "uncertainty"],
    ],
    guide: [
      "Begin with the name of the study, who asks for it and which board decides. The requested option can be chosen once there are program options.",
    ],
  },
  {
    id: "lake",
    section: "lake",
    keys: [
      ...["name", "description", "species", "depthType", "infestedSince", "chemistry", "calciumScheme"],
      ...["surfaceTemperature", "deepTemperature", "thermoclineDepth", "airTemperature", "humidity"],
    ],
    guide: [
      "Calcium first: it decides most about whether mussels can live here. Then the temperatures of water and air by month; they decide how fast mussels grow and how fast they dry.",
    ],
  },
  {
    id: "levels",
    section: "lake",
    keys: [
      ...["maximumElevation", "minimumElevation", "drawdown", "record", "storageTable"],
      ...["storageValue", "storageValueOrigin", "otherSchedules"],
    ],
    guide: [
      "Give either a schedule, as levels on days of the year, or a record of measured levels. The picture shows which structures are exposed, and for how long.",
    ],
  },
  {
    id: "money",
    section: "money",
    keys: [
      ...["bearers", "programBearer", "currency", "priceYear", "startYear", "horizon"],
      ...[
        "discountRate",
        "discountRateOrigin",
        "timing",
        "otherDiscountRates",
        "inflation",
        "inflationOrigin",
      ],
      ...["fiscalYearStart", "escalation", "pricesOfAssumptions", "exchangeRate", "exchangeRateYear"],
      ...["exchangeRateOrigin", "indexValues", "worksIndex"],
    ],
    guide: [
      "Name first those who pay, for the program and for each structure. Then the price year, the years that the study covers, and the discount rate with its origin.",
    ],
  },
  {
    id: "structures",
    section: "structures",
    keys: [],
    guide: [
      "List what mussels would foul: intakes, plants, service lines, docks and ramps, and what the whole lake has to pay for. Add them one by one, or paste a table.",
    ],
  },
  {
    id: "boats",
    section: "boats",
    keys: ["launches", "classes", "chance", "otherWays", "cleanPeriods", "sites", "traffic", "seasons"],
    guide: [
      "Launches by month and the classes of boats are needed: how many come, and how many of each class have mussels on them, dead or alive. Sites and boats by hour are only needed to plan inspectors.",
    ],
  },
  {
    id: "options",
    section: "options",
    keys: [],
    guide: [
      "The first option does nothing at the ramp and is what the others are held against. Add at least one program beside it, with its steps and what it costs.",
    ],
  },
  {
    id: "printed",
    section: "report",
    keys: ["ask", "found", "paper", "leaveOut", "texts"],
    guide: [
      "First the request: last year’s figures, the wording of the motion, and who checked the study. Everything is printed unless you leave it out; page 1 always is. Your own words can stand in each section: why the board meets, what was agreed, what you know and the estimate does not.",
    ],
  },
];

export const partOf = (id: string): StudyPart | undefined => studyParts.find((part) => part.id === id);

/** Fields of a part's page; for a list those of one item. */
export function fieldsOfPart(part: StudyPart): readonly NamedField[] {
  const section = studyFields().fields.find(({ key }) => key === part.section)?.field;
  return section?.kind === "group" ? inOrder(section, part.keys) : [];
}

function inOrder({ fields }: GroupField, keys: readonly string[]): NamedField[] {
  return keys.flatMap((key) => fields.find((field) => field.key === key) ?? []);
}

/** Whether a place belongs to a part's page. A missing section belongs to every page with a part of it. */
export function isInPart(part: StudyPart, at: readonly PropertyKey[] | undefined): boolean {
  if (!at || at[0] !== part.section) return false;
  if (part.keys.length === 0 || at.length === 1) return true;
  const key = String(at[1]);
  return part.keys.includes(key) || !isKnown(part.section, key, part.id);
}

/** Keys of a section on no page, which are reported on the section's first. */
function isKnown(section: string, key: string, id: PartId): boolean {
  const pages = studyParts.filter((part) => part.section === section);
  return pages.some((page) => page.keys.includes(key)) || pages[0]?.id !== id;
}

export type PartState =
  | { readonly state: "complete" }
  | { readonly state: "empty" }
  | { readonly state: "unfinished"; readonly missing: number; readonly wrong: number };

/** Progress of each part, by id. */
export function partStates(problems: readonly Problem[]): ReadonlyMap<PartId, PartState> {
  const of = (part: StudyPart): PartState => {
    const own = problems.filter(({ at }) => isInPart(part, at));
    if (own.length === 0) return { state: "complete" };
    if (own.some(({ at, found }) => at?.length === 1 && found === "nothing")) return { state: "empty" };
    const missing = own.filter(({ found }) => found === "nothing").length;
    return { state: "unfinished", missing, wrong: own.length - missing };
  };
  return new Map(studyParts.map((part) => [part.id, of(part)]));
}

/** "complete", "2 missing, 1 to mend". */
export function partStateText(state: PartState): string {
  if (state.state !== "unfinished") return state.state === "complete" ? "complete" : "not begun";
  const { missing, wrong } = state;
  return [missing > 0 ? `${missing} missing` : "", wrong > 0 ? `${wrong} to mend` : ""]
    .filter(Boolean)
    .join(", ");
}
