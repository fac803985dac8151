import type { Measure } from "../../model/search/variant.js";
import type { StudyDocument } from "../format/schema.js";
import { withoutUnits } from "../prepare/to-model.js";
import type { SearchRules } from "./rules.js";

/** Something that a program has in one of several ways. */
export interface MeasureChoice {
  readonly id: string;
  /** The first is that of the option to start from. */
  readonly ways: readonly [Way, ...Way[]];
}

interface Way {
  readonly measure: Measure | undefined;
  readonly name: string;
}

/** Sets of measures that are searched one by one. */
export const mostSets = 64;

/** What may be taken or left beside the hours: the wash unit and the seals that the option has, fees, and what the study lists. */
export function measureChoices(
  option: StudyDocument["options"][number],
  rules: SearchRules,
): MeasureChoice[] {
  const { varies, stated } = rules;
  const { steps, equipment, fees } = option;
  if (!steps) return [];
  const hasWash = equipment.some(({ group }) => group === "hot-wash") && steps.hotWash.value > 0;
  return [
    ...(varies("wash") && hasWash
      ? [
          either(
            { id: "no-wash", name: "no wash unit", leaves: ["hot-wash"], withoutWash: true },
            "wash unit",
          ),
        ]
      : []),
    ...(varies("seals") && steps.seals.length > 0
      ? [either({ id: "no-seals", name: "no seals", leaves: ["seals"], withoutSeals: true }, "seals")]
      : []),
    ...(varies("fees") && fees.length > 0 && stated?.fees ? [feeChoice(stated.fees)] : []),
    ...(varies("measures") ? (stated?.measures ?? []).map((each) => either(measureOf(each), undefined)) : []),
  ];
}

const either = (measure: Measure, own: string | undefined): MeasureChoice => ({
  id: measure.id,
  ways: [
    { measure: undefined, name: own ?? `without ${measure.name}` },
    { measure, name: measure.name },
  ],
});

function feeChoice(shares: readonly number[]): MeasureChoice {
  const others = shares.filter((share) => share !== 1);
  return {
    id: "fees",
    ways: [
      { measure: undefined, name: "fees as they are" },
      ...others.map((share) => {
        const name = `fees at ${Number((share * 100).toFixed(2))} %`;
        return { measure: { id: `fees-${share}`, name, leaves: [], fees: share }, name };
      }),
    ],
  };
}

function measureOf(each: NonNullable<NonNullable<StudyDocument["search"]>["measures"]>[number]): Measure {
  const { id, name, cost, origin: _, ...steps } = withoutUnits(each);
  const set = Object.fromEntries(Object.entries(steps).filter(([, value]) => value !== undefined));
  return { id, name, leaves: [], cost, steps: set };
}

/** Every way of taking one of each, the option's own first. */
export function measureSets(choices: readonly MeasureChoice[]): Measure[][] {
  return choices.reduce<Measure[][]>(
    (sets, { ways }) => ways.flatMap(({ measure }) => sets.map((set) => (measure ? [...set, measure] : set))),
    [[]],
  );
}
