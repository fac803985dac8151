/** A function of an object that never changes, worked out once for each, as long as somebody holds it. */
export function oncePer<Item extends object, Made>(make: (item: Item) => Made): (item: Item) => Made {
  const known = new WeakMap<Item, { readonly made: Made }>();
  return (item) => {
    const found = known.get(item) ?? { made: make(item) };
    known.set(item, found);
    return found.made;
  };
}
