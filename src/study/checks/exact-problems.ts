import type { WrittenStudy } from "../format/schema.js";
import type { Contradiction } from "../reading/contradiction.js";
import { singleValues } from "../typed/single-values.js";
import { alwaysVaries, typedIdOf } from "../typed/typed-kinds.js";

/** Effects and chances that are said to be exact: the report weighs what comes if they are off. */
export function exactProblems(document: WrittenStudy): Contradiction[] {
  return singleValues(document, [], []).flatMap(({ path, quantity }) => {
    const id = quantity.exact && typedIdOf(path, quantity.dimension);
    if (!id || !alwaysVaries(id) || quantity.value === 0 || quantity.value === 1) return [];
    return [
      {
        path,
        found: `"${quantity.text}"`,
        allowed:
          "one value or a range: how well a step works, how many stay away and what a chance is are never known for certain, and the report weighs what comes if they are off",
        remedy: 'Leave out "exact", or give the range that you believe, such as "20 to 30 to 40 %".',
      },
    ];
  });
}
