import type { Reader } from "./measure.js";
import { quantityReaders } from "./quantity-readers.js";
import { recordReaders } from "./record-readers.js";
import { requestReaders } from "./request-readers.js";
import { studyReaders } from "./study-readers.js";

/** Everything in the program that is given a text from outside. */
export const allReaders = (): readonly Reader[] => [
  ...quantityReaders,
  ...recordReaders(),
  ...studyReaders(),
  ...requestReaders,
];
