import type { Lake } from "../../src/model/lake/lake.js";
import { everyMonth } from "./near.js";

/** An invented productive lake, warm in summer, hard water, full to 100 m all year. */
export const productiveLake: Lake = {
  name: "Invented lake",
  species: "quagga",
  depthType: "shallow",
  maximumElevation: 100,
  minimumElevation: 80,
  storageTable: [
    { elevation: 60, area: 1e6, storage: 0 },
    { elevation: 100, area: 3e6, storage: 80e6 },
  ],
  drawdown: [{ dayOfYear: 0, elevation: 100 }],
  otherSchedules: [],
  storageValue: 0,
  surfaceTemperature: [4, 4, 7, 11, 16, 21, 24, 24, 21, 16, 10, 6],
  deepTemperature: [4, 4, 5, 7, 9, 11, 12, 13, 13, 12, 9, 6],
  thermoclineDepth: 12,
  airTemperature: [-3, 0, 5, 10, 15, 20, 24, 24, 18, 11, 4, -2],
  humidity: everyMonth(0.6),
  chemistry: { calcium: 40, ph: 8.4 },
  calciumScheme: "whittier",
};

/** The same lake lowered from the first day of January to the last of February, 10 m below its full level. */
export const drawnDownLake: Lake = {
  ...productiveLake,
  drawdown: [
    { dayOfYear: 0, elevation: 90 },
    { dayOfYear: 57, elevation: 90 },
    { dayOfYear: 59, elevation: 100 },
    { dayOfYear: 364, elevation: 100 },
  ],
};
