import { at } from "../../lists.js";

/** Where a structure's leader begins, and where its label stands; both from the top of the drawing. */
interface Leader {
  readonly from: number;
  readonly label: number;
}

/**
 * Places of marks beside each other so that their leaders do not cross, in the order of their labels from the top; place 0
 * is nearest to the labels. Of marks at one height those whose leaders rise stand farthest off, the topmost label's first.
 */
export function leaderPlaces(leaders: readonly Leader[]): number[] {
  const places: number[] = [];
  for (let start = 0; start < leaders.length; ) {
    const { from } = at(leaders, start);
    const after = leaders.findIndex((each, index) => index > start && each.from !== from);
    const end = after === -1 ? leaders.length : after;
    const alike = leaders.slice(start, end);
    const rising = alike.filter(({ label }) => label < from).length;
    places.push(...alike.map((_, index) => (index < rising ? end - 1 - index : start + index - rising)));
    start = end;
  }
  return places;
}
