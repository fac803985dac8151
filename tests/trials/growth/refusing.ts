import { InputError } from "#product/study/reading/problems.js";
import { QuantityError } from "#product/units/quantity.js";
import { MatchFailedError } from "#product/web/api/entity-tag.js";

/** Reading that may end in a refusal. Any other end is a fault of the reader. */
export function refusing(read: (text: string) => unknown): (text: string) => unknown {
  return (text) => {
    try {
      return read(text);
    } catch (error) {
      const isRefusal =
        error instanceof QuantityError || error instanceof InputError || error instanceof MatchFailedError;
      if (!isRefusal) throw error;
      return undefined;
    }
  };
}
