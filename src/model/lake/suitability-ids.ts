import type { RegisteredId } from "../register/register.js";

/** Values between which each class of a variable lies; infinite where a class does not end. */
export interface Bounds {
  readonly lowFrom: number;
  readonly moderateFrom: number;
  readonly highFrom: number;
  readonly highTo: number;
  readonly moderateTo: number;
  readonly lowTo: number;
}

/** The assumption behind each bound that a variable has: rising ones always, or falling ones, or both. */
export type BoundIds = { readonly [Bound in keyof Bounds]?: RegisteredId };

/** By the scheme of classes that the study asks for. */
export const calciumBounds = {
  whittier: {
    lowFrom: "suitability.calcium.whittier.low-from",
    moderateFrom: "suitability.calcium.whittier.moderate-from",
    highFrom: "suitability.calcium.whittier.high-from",
  },
  "mackie-claudi": {
    lowFrom: "suitability.calcium.mackie-claudi.low-from",
    moderateFrom: "suitability.calcium.mackie-claudi.moderate-from",
    highFrom: "suitability.calcium.mackie-claudi.high-from",
  },
} as const satisfies Record<string, BoundIds>;

/** By the name of a variable in the lake's chemistry. */
export const chemistryBounds = {
  ph: {
    lowFrom: "suitability.ph.low-from",
    moderateFrom: "suitability.ph.moderate-from",
    highFrom: "suitability.ph.high-from",
    highTo: "suitability.ph.high-to",
    moderateTo: "suitability.ph.moderate-to",
    lowTo: "suitability.ph.low-to",
  },
  alkalinity: {
    lowFrom: "suitability.alkalinity.low-from",
    moderateFrom: "suitability.alkalinity.moderate-from",
    highFrom: "suitability.alkalinity.high-from",
  },
  hardness: {
    lowFrom: "suitability.hardness.low-from",
    moderateFrom: "suitability.hardness.moderate-from",
    highFrom: "suitability.hardness.high-from",
  },
  oxygen: {
    lowFrom: "suitability.oxygen.low-from",
    moderateFrom: "suitability.oxygen.moderate-from",
    highFrom: "suitability.oxygen.high-from",
  },
  conductivity: {
    lowFrom: "suitability.conductivity.low-from",
    moderateFrom: "suitability.conductivity.moderate-from",
    highFrom: "suitability.conductivity.high-from",
  },
  salinity: {
    highTo: "suitability.salinity.high-to",
    moderateTo: "suitability.salinity.moderate-to",
    lowTo: "suitability.salinity.low-to",
  },
} as const satisfies Record<string, BoundIds>;

/** None below the moderate class. */
export const temperatureBounds: BoundIds = {
  lowTo: "suitability.temperature.low-to",
  lowFrom: "suitability.temperature.moderate-from",
  moderateFrom: "suitability.temperature.moderate-from",
  highFrom: "suitability.temperature.high-from",
  highTo: "suitability.temperature.high-to",
  moderateTo: "suitability.temperature.moderate-to",
};
