import type { RegisteredId } from "../register/register.js";
import type { TurbineType } from "../structures/inputs.js";

interface TurbineIds {
  readonly peakEfficiency: RegisteredId;
  /** Efficiency over its peak at 20, 40, 60, 80 and 100 % of the rated flow. */
  readonly relative: readonly RegisteredId[];
  readonly minimumShare: RegisteredId;
}

/** Assumptions on the turbines of each type. */
export const turbineAssumptions: Readonly<Record<TurbineType, TurbineIds>> = {
  francis: {
    peakEfficiency: "turbine.francis.peak-efficiency",
    relative: [
      "turbine.francis.relative-20",
      "turbine.francis.relative-40",
      "turbine.francis.relative-60",
      "turbine.francis.relative-80",
      "turbine.francis.relative-100",
    ],
    minimumShare: "turbine.francis.minimum-flow",
  },
  kaplan: {
    peakEfficiency: "turbine.kaplan.peak-efficiency",
    relative: [
      "turbine.kaplan.relative-20",
      "turbine.kaplan.relative-40",
      "turbine.kaplan.relative-60",
      "turbine.kaplan.relative-80",
      "turbine.kaplan.relative-100",
    ],
    minimumShare: "turbine.kaplan.minimum-flow",
  },
  propeller: {
    peakEfficiency: "turbine.propeller.peak-efficiency",
    relative: [
      "turbine.propeller.relative-20",
      "turbine.propeller.relative-40",
      "turbine.propeller.relative-60",
      "turbine.propeller.relative-80",
      "turbine.propeller.relative-100",
    ],
    minimumShare: "turbine.propeller.minimum-flow",
  },
  crossflow: {
    peakEfficiency: "turbine.crossflow.peak-efficiency",
    relative: [
      "turbine.crossflow.relative-20",
      "turbine.crossflow.relative-40",
      "turbine.crossflow.relative-60",
      "turbine.crossflow.relative-80",
      "turbine.crossflow.relative-100",
    ],
    minimumShare: "turbine.crossflow.minimum-flow",
  },
  pelton: {
    peakEfficiency: "turbine.pelton.peak-efficiency",
    relative: [
      "turbine.pelton.relative-20",
      "turbine.pelton.relative-40",
      "turbine.pelton.relative-60",
      "turbine.pelton.relative-80",
      "turbine.pelton.relative-100",
    ],
    minimumShare: "turbine.pelton.minimum-flow",
  },
};
