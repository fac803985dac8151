import { type Reached, valueAtPlace } from "../../model/uncertainty/reach.js";
import { placesOf, withNumbers } from "../prepare/number-places.js";

/** What is drawn, by the ids of the inputs. */
export type Values = Pick<ReadonlyMap<string, number>, "get" | "has">;

/** A quantity given with a range, or one of those typed as one number, of which a place in the range is drawn. */
export interface MovedQuantity {
  readonly id: string;
  readonly path: readonly PropertyKey[];
  readonly quantity: { readonly value: number };
  readonly range?: Reached;
}

/** Puts what is drawn of some quantities into groups that are built as the given one; what is not drawn stays. */
export function numbersIn<Group extends object>(
  built: Group,
  quantities: readonly MovedQuantity[],
): (group: Group, values: Values) => Group {
  const places = placesOf(built, quantities);
  const numbers = quantities.map(({ quantity }) => quantity.value);
  return (group, values) => {
    if (!quantities.some(({ id }) => values.has(id))) return group;
    quantities.forEach((each, index) => {
      numbers[index] = numberOf(each, values);
    });
    return withNumbers(group, places, numbers);
  };
}

function numberOf({ id, quantity: { value }, range }: MovedQuantity, values: Values): number {
  const drawn = values.get(id) ?? (range ? 0 : value);
  return range ? valueAtPlace(value, range, drawn) : drawn;
}
