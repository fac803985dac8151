import { at } from "../../src/lists.js";
import type { PrintedOdds } from "../../src/report/odds/odds-words.js";
import { drawnStudy } from "../../src/study/odds/draws.js";
import { type Odds, type OptionOdds, quantileShares } from "../../src/study/odds/odds.js";
import { assumptions, exampleDocument } from "./runs.js";

type Example = "sorrel-bend" | "ninemoss";

/** An invented option: present value of its program, chance of infestation, and share of futures in which it is cheaper. */
interface Invented {
  readonly program: number;
  readonly infested: number;
  readonly cheaper: number;
}

/** All figures are invented; dearer programs leave a smaller chance. `loss` is the mean cost of an infestation. */
const invented: Record<Example, { loss: number; firstYear: number; options: Record<string, Invented> }> = {
  "sorrel-bend": {
    loss: 14_000_000,
    firstYear: 2027,
    options: {
      none: { program: 210_000, infested: 0.57, cheaper: 0 },
      drawdown: { program: 320_000, infested: 0.57, cheaper: 0.37 },
      weekends: { program: 2_350_000, infested: 0.43, cheaper: 0.24 },
      "full-season": { program: 4_480_000, infested: 0.22, cheaper: 0.36 },
    },
  },
  ninemoss: {
    loss: 310_000,
    firstYear: 2027,
    options: {
      none: { program: 0, infested: 0.08, cheaper: 0 },
      signs: { program: 19_000, infested: 0.072, cheaper: 0.031 },
      "summer-checks": { program: 690_000, infested: 0.03, cheaper: 0.012 },
    },
  },
};

const around = (value: number, share = 0.04) => ({
  value,
  low: value * (1 - share),
  high: value * (1 + share),
});
const told = (value: number) => ({
  value,
  low: Math.max(0, value - 0.02),
  high: Math.min(1, value + 0.02),
});

/** Quantile of an invented option: its program alone in clean futures, and a loss that rises without end in the others. */
function costAt(share: number, { program, infested }: Invented, loss: number): number {
  const clean = 1 - infested;
  if (share <= clean) return program * (0.94 + (0.12 * share) / clean);
  const among = (share - clean) / infested;
  return program * 1.06 + loss * (0.1 + 0.9 * among ** 2 + 1.2 * among ** 9);
}

function optionOdds(id: string, name: string, option: Invented, example: Example): OptionOdds {
  const { loss, firstYear } = invented[example];
  const mean = option.program + option.infested * loss * 0.52;
  const yearly = Array.from({ length: 30 }, (_, year) => {
    const chance = option.infested * ((year + 1) / 30);
    const program = option.program / 19;
    return {
      year: firstYear + year,
      mean: program + chance * loss * 0.06,
      p10: program * 0.85,
      p50: program + (chance > 0.5 ? loss * 0.02 : 0),
      p90: program * 1.15 + (chance > 0.1 ? loss * (0.03 + 0.12 * chance) : 0),
    };
  });
  return {
    id,
    name,
    meanCost: { value: mean, standardError: mean * 0.013 },
    cost: quantileShares.map((share) => ({ share, ...around(costAt(share, option, loss)) })),
    programCost: { value: option.program, standardError: option.program * 0.004 },
    everInfested: told(option.infested),
    infestedAtEnd: told(option.infested),
    against:
      id === "none"
        ? undefined
        : {
            cheaper: told(option.cheaper),
            worthIt: told(option.cheaper * 1.2),
            netBenefit: { value: mean * 0.1, standardError: mean * 0.01 },
            addedCost: { value: option.program, standardError: option.program * 0.004 },
            avoidedLoss: { value: option.program + mean * 0.1, standardError: mean * 0.01 },
            benefitCostRatio: option.program > 0 ? 1 + (mean * 0.1) / option.program : undefined,
            netBenefits: quantileShares.map((share) => ({ share, ...around(loss * (share - 0.5)) })),
            avoided: { damage: option.program + mean * 0.1, duty: 0, policy: 0, other: 0 },
            ratioWithout: { duty: undefined, policy: undefined },
            withOther: undefined,
          },
    fan: yearly,
    exceedance: Array.from({ length: 100 }, (_, index) => ({
      cost: costAt(index / 100, option, loss),
      chance: (100 - index) / 100,
    })),
    budget: { ...around(costAt(0.8, option, loss) / 19.6), confidence: 0.8 },
    regret: mean * 0.06,
  };
}

/** Inputs of the examples with P10 and P90 near those of their assumptions, and invented effects, widest first. */
const moved = [
  ["arrival.founding-unknown", 0.0005, 0.0046, -0.31, 0.44],
  ["growth.settlers-per-month", 900, 6100, -0.22, 0.27],
  ["settlement.no-velocity", 1.6, 2.3, -0.16, 0.19],
  ["cleaning.conduit.rate", 22, 61, -0.12, 0.15],
  ["population.peak-share", 0.4, 0.8, -0.1, 0.12],
  ["boats/classes/infested-30-days/fouled", 0.022, 0.041, -0.09, 0.1],
  ["growth.cover-limit", 0.75, 0.95, -0.08, 0.09],
  ["cleaning.rack.base", 14, 35, -0.06, 0.08],
  ["arrival.shape", 1.1, 1.6, 0.07, -0.05],
  ["shell.growth-rate", 0.0002, 0.0004, -0.04, 0.05],
  ["labour.maintenance-rate", 38, 66, -0.03, 0.04],
  ["steps.dependence", 0.2, 0.8, 0.03, -0.03],
] as const;

const nameOf = (id: string) =>
  id.startsWith("boats/") ? "share of boats found fouled, On infested water in the last 30 days" : id;

/** Odds of an example, for the look and the arithmetic of the report. */
export function sampleOdds(example: Example): Odds {
  const { loss, options } = invented[example];
  const document = exampleDocument(example);
  const settings = { seed: 1, sampling: "latin-hypercube" } as const;
  const netBenefit = example === "sorrel-bend" ? loss * 0.06 : -loss * 2;
  const named = moved.map(([id]) => ({ id, name: nameOf(id) }));
  return {
    settings,
    futures: 8192,
    lakes: 1024,
    blocks: 16,
    end: "precise",
    inputs: drawnStudy(document, assumptions, settings).inputs.length,
    requested: document.study.requestedOption,
    baseline: "none",
    options: document.options.map(({ id, name }) => {
      const option = options[id];
      if (!option) throw new Error(`no invented odds of ${id}`);
      return optionOdds(id, name, option, example);
    }),
    perfectInformation: loss * 0.061,
    perfectInformationError: loss * 0.001,
    planTurns: [],
    information: named.slice(0, 5).map(({ id, name }, index) => ({
      id,
      name,
      value: (loss * 0.04) / (index + 1) ** 2,
      standardError: loss * 0.002,
    })),
    matters: {
      netBenefit,
      tornado: moved.map(([id, low, high, down, up]) => ({
        id,
        name: nameOf(id),
        low: { input: low, netBenefit: netBenefit + down * loss },
        high: { input: high, netBenefit: netBenefit + up * loss },
      })),
      ranks: named.map((input, index) => ({
        ...input,
        correlation: (index % 3 === 2 ? -0.7 : 0.7) / (index + 1),
      })),
    },
  };
}

/** The same with three invented sentences on what matters. */
export function sampleTold(example: Example): PrintedOdds {
  const odds = sampleOdds(example);
  const { tornado } = odds.matters;
  return {
    odds,
    sensitivitySentences: [
      `The chance that a fouled launch of unknown origin founds a population matters most: at its low end the program saves less than it costs, at its high end more.`,
      `Next are the settlers a month on a bare surface and how well the water suits mussels.`,
      `The other ${tornado.length - 3} inputs shown move the answer less than a tenth as much as the first; better prices would change little.`,
    ],
  };
}

/** Odds whose requested option is the cheaper one in a share of the futures. */
export function withCheaper(odds: Odds, share: number): Odds {
  return {
    ...odds,
    options: odds.options.map((option) =>
      option.id === odds.requested && option.against
        ? { ...option, against: { ...option.against, cheaper: { value: share, low: share, high: share } } }
        : option,
    ),
  };
}

/** Option of the odds by its place. */
export const optionAt = ({ options }: Odds, index: number): OptionOdds => at(options, index);
