import type { Contradiction } from "../reading/contradiction.js";
import type { SoundParts } from "./sound-parts.js";

type Path = readonly PropertyKey[];

/** Lists with duplicates, of which the second would be ignored or counted twice. */
export function uniqueProblems(parts: SoundParts): Contradiction[] {
  return [
    ...parts.structures.flatMap(({ index, value }) => structureProblems(value, ["structures", index])),
    ...(parts.options ?? []).flatMap((option, index) => optionProblems(option, ["options", index])),
    ...nameProblems(parts),
    ...rateProblems(parts),
    ...sectionProblems(parts),
  ];
}

interface UniqueRule<Item> {
  /** What must be unique; undefined if duplicates do no harm. */
  readonly key: (item: Item) => string | undefined;
  /** Field reported for the duplicate; the whole item if none is named. */
  readonly field?: string;
  readonly text: (item: Item) => string;
  readonly allowed: string;
  readonly remedy: string;
}

/** Items that repeat an earlier key, reported with both places. */
function repeated<Item>(items: readonly Item[], path: Path, rule: UniqueRule<Item>): Contradiction[] {
  if (items.length < 2) return [];
  const first = new Map<string, number>();
  return items.flatMap((item, index) => {
    const key = rule.key(item);
    if (key === undefined) return [];
    const before = first.get(key);
    if (before === undefined) {
      first.set(key, index);
      return [];
    }
    const place = [...path, index, ...(rule.field === undefined ? [] : [rule.field])];
    const found = `${rule.text(item)} a second time, first in ${String(path.at(-1))}[${before}]`;
    return [{ path: place, found, allowed: rule.allowed, remedy: rule.remedy }];
  });
}

type StructureDocument = SoundParts["structures"][number]["value"];

function structureProblems(structure: StructureDocument, path: Path): Contradiction[] {
  const pinned = repeated(structure.pinned, [...path, "pinned"], {
    key: ({ part }) => part,
    field: "part",
    text: ({ part }) => `"${part}"`,
    allowed: "one plan for each part",
    remedy: "Keep the plan that is meant, and remove the other.",
  });
  const items = "items" in structure ? lines(structure.items, [...path, "items"]) : [];
  const duties = "duties" in structure ? lines(structure.duties, [...path, "duties"]) : [];
  return [...pinned, ...lines(structure.fixtures, [...path, "fixtures"]), ...items, ...duties];
}

type OptionDocument = NonNullable<SoundParts["options"]>[number];

const costLists = ["staff", "equipment", "yearly", "otherRevenue", "fees"] as const;

function optionProblems(option: OptionDocument, path: Path): Contradiction[] {
  const { steps } = option;
  const classes = (["seals", "byClass"] as const).flatMap((list) =>
    repeated<{ readonly vesselClass: string }>(steps?.[list] ?? [], [...path, "steps", list], {
      key: ({ vesselClass }) => vesselClass,
      field: "vesselClass",
      text: ({ vesselClass }) => `"${vesselClass}"`,
      allowed: "each class once",
      remedy: "Keep the entry that is meant, and remove the other.",
    }),
  );
  return [
    ...classes,
    ...costLists.flatMap((list) => lines<{ readonly name: string }>(option[list], [...path, list])),
  ];
}

/** Identical lines, which would be paid for twice; lines that only share a name may be separate items. */
const lines = <Line extends { readonly name: string }>(list: readonly Line[], path: Path) =>
  repeated(list, path, {
    key: (line) => JSON.stringify(line),
    text: ({ name }) => `the whole line "${name}"`,
    allowed: "each line once",
    remedy:
      "Remove one of the two; where there are two of a kind, raise the count or tell them apart by name.",
  });

/** Items that readers distinguish by name alone. */
function nameProblems({ lake, boats, options, money }: SoundParts): Contradiction[] {
  return [
    ...names(lake?.otherSchedules, ["lake", "otherSchedules"]),
    ...names(boats?.classes, ["boats", "classes"]),
    ...names(boats?.sites, ["boats", "sites"]),
    ...names(boats?.traffic?.dayTypes, ["boats", "traffic", "dayTypes"]),
    ...names(boats?.traffic?.monthGroups, ["boats", "traffic", "monthGroups"]),
    ...names(options, ["options"]),
    ...names(money?.bearers, ["money", "bearers"]),
  ];
}

const names = (list: ReadonlyArray<{ readonly name: string }> | undefined, path: Path) =>
  repeated(list ?? [], path, {
    key: ({ name }) => name.toLowerCase(),
    field: "name",
    text: ({ name }) => `"${name}"`,
    allowed: "a name used once: tables and pages have nothing else to tell them apart",
    remedy: "Give one of the two another name.",
  });

/** Other rates that repeat one another or the study's own. */
function rateProblems({ money }: SoundParts): Contradiction[] {
  const { otherDiscountRates, discountRate } = money ?? {};
  if (!otherDiscountRates || !discountRate) return [];
  const [one, other] = otherDiscountRates;
  const path = ["money", "otherDiscountRates"];
  const remedy = "Enter another rate.";
  const own = otherDiscountRates.flatMap(({ value, text }, index) =>
    value === discountRate.value
      ? [{ path: [...path, index], found: text, allowed: "a rate other than money.discountRate", remedy }]
      : [],
  );
  const same =
    one.value === other.value
      ? [
          {
            path: [...path, 1],
            found: `${other.text} a second time`,
            allowed: "two rates that differ",
            remedy,
          },
        ]
      : [];
  return [...own, ...same];
}

function sectionProblems({ report }: SoundParts): Contradiction[] {
  const leaveOut = repeated<string>(report?.leaveOut ?? [], ["report", "leaveOut"], {
    key: (section) => section,
    text: (section) => `"${section}"`,
    allowed: "each section once",
    remedy: "Remove one of the two.",
  });
  const texts = repeated(report?.texts ?? [], ["report", "texts"], {
    key: ({ section, text }) => `${section} ${text}`,
    text: ({ section }) => `the same text in "${section}"`,
    allowed: "each text once in a section",
    remedy: "Remove one of the two.",
  });
  return [...leaveOut, ...texts];
}
