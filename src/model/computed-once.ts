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

const heldIn = Symbol("what is made when asked for");

interface Held {
  readonly [heldIn]: {
    readonly makers: Makers<Record<string, unknown>>;
    made: Map<string, unknown> | undefined;
  };
}

type Makers<Later> = { readonly [Key in keyof Later]: () => Later[Key] };

const accessors = new Map<string, PropertyDescriptor>();

/** One function for each name: see `withLater`. */
function accessorOf(name: string): PropertyDescriptor {
  const known = accessors.get(name);
  if (known) return known;
  const accessor = {
    enumerable: true,
    get(this: Held) {
      const held = this[heldIn];
      held.made ??= new Map();
      if (!held.made.has(name)) held.made.set(name, held.makers[name]?.());
      return held.made.get(name);
    },
  };
  accessors.set(name, accessor);
  return accessor;
}

/**
 * The object itself with further properties, each made when first asked for and then kept. Getters written into an object
 * would do the same, but the engine holds on to each of their functions, with all that these can reach, until it collects
 * its whole memory.
 */
export function withLater<Own extends object, Later extends object>(
  own: Own,
  makers: Makers<Later>,
): Own & Readonly<Later> {
  Object.defineProperty(own, heldIn, { value: { makers, made: undefined } });
  for (const name of Object.keys(makers)) Object.defineProperty(own, name, accessorOf(name));
  return own as Own & Readonly<Later>;
}
