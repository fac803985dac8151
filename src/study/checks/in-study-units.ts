import { type DimensionName, dimensions } from "../../units/dimensions.js";
import { toDisplay } from "../../units/quantity.js";

/** Writes values in a study's units, with the digits that a message needs. */
export const textIn =
  (system: "us" | "si") =>
  (value: number, dimension: DimensionName, digits = 3): string => {
    const number = toDisplay(value, dimension, system).toLocaleString("en-US", {
      maximumSignificantDigits: digits,
    });
    return `${number} ${dimensions[dimension][system].label}`;
  };
