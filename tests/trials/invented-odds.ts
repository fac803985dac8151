import { isBaseline } from "#product/model/compare.js";
import type { StudyToDraw } from "#product/odds/messages.js";
import { type Odds, quantileShares } from "#product/study/odds/odds.js";

const mean = (value: number) => ({ value, standardError: value / 100 });
const share = (value: number) => ({ value, low: value, high: value });
const quantiles = (of: number) =>
  quantileShares.map((each) => ({ share: each, value: of * each, low: of * each, high: of * each }));

/** Odds of any study at once: all figures are invented. */
export async function inventedOdds({ document }: StudyToDraw): Promise<Odds> {
  const { options, study, money } = document;
  return {
    settings: { seed: 1, sampling: "latin-hypercube" },
    ...{ futures: 1024, lakes: 128, blocks: 2, end: "precise", inputs: 3, requested: study.requestedOption },
    baseline: options.find(isBaseline)?.id ?? "none",
    options: options.map((option) => ({
      id: option.id,
      name: option.name,
      meanCost: mean(900_000),
      cost: quantiles(1_000_000),
      everInfested: share(0.31),
      infestedAtEnd: share(0.3),
      programCost: mean(500_000),
      against: isBaseline(option)
        ? undefined
        : {
            ...{ cheaper: share(0.2), worthIt: share(0.1), benefitCostRatio: 0.4 },
            ...{ netBenefit: mean(-300_000), addedCost: mean(500_000), avoidedLoss: mean(200_000) },
            netBenefits: quantiles(-600_000),
            avoided: { damage: 150_000, duty: 20_000, policy: 30_000, other: 0 },
            ratioWithout: { duty: 0.36, policy: 0.34 },
            withOther: undefined,
          },
      fan: Array.from({ length: money.horizon }, (_, year) => ({
        ...{ year: money.startYear + year, mean: 30_000, p10: 20_000, p50: 30_000, p90: 40_000 },
      })),
      exceedance: [1, 0.5, 0].map((chance) => ({ cost: 1_000_000 * (1 - chance), chance })),
      budget: { value: 50_000, low: 50_000, high: 50_000, confidence: 0.8 },
      regret: 10_000,
    })),
    perfectInformation: 20_000,
    perfectInformationError: 500,
    planTurns: [],
    information: [],
    matters: {
      netBenefit: -300_000,
      tornado: [
        {
          ...{ id: "population.peak-share", name: "share of the peak" },
          low: { input: 0.4, netBenefit: -350_000 },
          high: { input: 0.8, netBenefit: -150_000 },
        },
      ],
      ranks: [{ id: "population.peak-share", name: "share of the peak", correlation: 0.5 }],
    },
  };
}
