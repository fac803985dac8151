/** What is made when first asked for, and then kept. */
export function once<Made>(make: () => Made): () => Made {
  let made: { readonly value: Made } | undefined;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}

/** A function that makes what it is asked for once for each argument. */
export function remembered<Key, Made>(make: (key: Key) => Made): (key: Key) => Made {
  const known = new Map<Key, Made>();
  return (key) => {
    const before = known.get(key);
    if (before !== undefined) return before;
    const made = make(key);
    known.set(key, made);
    return made;
  };
}

/** The same for an argument that is asked for several times in a row: the last alone is kept. */
export function lastMade<Key, Made>(make: (key: Key) => Made): (key: Key) => Made {
  let last: { readonly key: Key; readonly made: Made } | undefined;
  return (key) => {
    if (last === undefined || last.key !== key) last = { key, made: make(key) };
    return last.made;
  };
}
