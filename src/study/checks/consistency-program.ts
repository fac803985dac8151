import { counted } from "../../counted.js";
import type { ProgramDocument } from "../format/program-schema.js";
import type { SoundYearly } from "../format/sound-options.js";
import { allSound, type Contradiction, exactlyOne, type Judged } from "../reading/contradiction.js";
import type { SoundParts } from "./sound-parts.js";

type Path = readonly PropertyKey[];

/** Contradictions in the options' costs, fees and revenue, and in the option now in force. */
export function programProblems({ options = [], boats, study }: SoundParts): Contradiction[] {
  const classes = boats?.classes.map(({ id }) => id);
  return [
    ...options.flatMap((option, index) => [
      ...(soundYearly(option, ["options", index, "yearly"]).problems ?? []),
      ...feeProblems(option, ["options", index], classes),
      ...stepProblems(option.steps, ["options", index, "steps"], classes),
    ]),
    ...(study && options.length > 0 ? existingProblems(study, options) : []),
  ];
}

/** An option's yearly lines, each a lump sum or a count with a unit price. */
export const soundYearly = ({ yearly }: ProgramDocument, path: Path): Judged<SoundYearly[]> =>
  allSound(yearly.map((line, index) => soundLine(line, [...path, index])));

function soundLine(line: ProgramDocument["yearly"][number], path: Path): Judged<SoundYearly> {
  const { cost, count, unitCost } = line;
  const strays = (["unitCost", "unit"] as const).filter(
    (field) => count === undefined && line[field] !== undefined,
  );
  const problems: Contradiction[] = [
    ...exactlyOne(line, "cost", "count"),
    ...strays.map((field) => ({
      path: [field],
      found: `${field} without count`,
      allowed: `${field} only beside count`,
      remedy: "Add the count or take it out.",
    })),
    ...(count !== undefined && unitCost === undefined
      ? [{ path: ["unitCost"], found: "nothing", allowed: 'the price of one, such as "$180"' }]
      : []),
  ];
  if (problems.length === 0) {
    if (cost !== undefined && count === undefined) return { sound: { ...line, cost, count } };
    if (cost === undefined && count !== undefined && unitCost !== undefined)
      return { sound: { ...line, cost, count, unitCost } };
  }
  return { problems: problems.map((problem) => ({ ...problem, path: [...path, ...problem.path] })) };
}

/** Seals and steps for vessel classes that do not exist. */
function stepProblems(
  steps: NonNullable<SoundParts["options"]>[number]["steps"],
  path: Path,
  classes: string[] | undefined,
): Contradiction[] {
  if (!steps || !classes) return [];
  return (["seals", "byClass"] as const).flatMap((field) =>
    steps[field].flatMap(({ vesselClass }, index) =>
      classes.includes(vesselClass)
        ? []
        : [
            {
              path: [...path, field, index, "vesselClass"],
              found: `"${vesselClass}"`,
              allowed: `an id from boats.classes: ${classes.join(", ")}`,
            },
          ],
    ),
  );
}

function feeProblems(option: ProgramDocument, path: Path, classes: string[] | undefined): Contradiction[] {
  const { fees, demandLoss } = option;
  const idle: Contradiction[] =
    demandLoss && fees.length === 0
      ? [
          {
            path: [...path, "demandLoss"],
            found: "a loss of demand of an option without fees",
            allowed: "a loss of demand only where there is a fee",
            remedy: "Add the fees or take it out.",
          },
        ]
      : [];
  return [
    ...idle,
    ...fees.flatMap((fee, index) =>
      singleFeeProblems(fee, { path: [...path, "fees", index], demandLoss, classes }),
    ),
  ];
}

function singleFeeProblems(
  { vesselClass, countPerYear, payers, fee }: ProgramDocument["fees"][number],
  {
    path,
    demandLoss,
    classes,
  }: { path: Path; demandLoss: ProgramDocument["demandLoss"]; classes: string[] | undefined },
): Contradiction[] {
  const problems: Contradiction[] = [];
  if (vesselClass !== undefined && classes && !classes.includes(vesselClass)) {
    const allowed = `an id from boats.classes: ${classes.join(", ")}`;
    problems.push({ path: [...path, "vesselClass"], found: `"${vesselClass}"`, allowed });
  }
  if (payers !== undefined && payers > countPerYear) {
    problems.push({
      path: [...path, "payers"],
      found: `${counted(payers, "boat")} that make ${counted(countPerYear, "payment")} a year`,
      allowed: "at most as many boats as payments: each pays at least once",
    });
  }
  if (demandLoss && fee.value > demandLoss.fee.value) {
    problems.push({
      path: [...path, "fee"],
      found: `${fee.text}, above ${demandLoss.fee.text}, the highest fee for which demandLoss states the loss of demand (${demandLoss.loss.text})`,
      allowed: `a fee of at most ${demandLoss.fee.text}: how many still pay above it is not stated`,
      remedy: "Lower the fee, or state in demandLoss the loss at this fee.",
    });
  }
  return problems;
}

function existingProblems(
  { existingOption, requestedOption }: NonNullable<SoundParts["study"]>,
  options: NonNullable<SoundParts["options"]>,
): Contradiction[] {
  if (existingOption === undefined) return [];
  const others = options.map(({ id }) => id).filter((id) => id !== requestedOption);
  if (others.includes(existingOption)) return [];
  const isRequested = existingOption === requestedOption;
  return [
    {
      path: ["study", "existingOption"],
      found: isRequested ? `"${existingOption}", which is the option requested` : `"${existingOption}"`,
      allowed: `the id of an option other than that requested: ${others.join(", ")}`,
      remedy: isRequested
        ? "Name the option in force now, or leave it out if there is none."
        : "Correct the id, or leave it out if no program is in force.",
    },
  ];
}
