/** One test of a file: what it is called, with the groups it stands in, and what it does. */
export interface CollectedTest {
  readonly name: string;
  readonly run: () => unknown;
}

type Body = (...values: unknown[]) => unknown;
type Setup = () => unknown;

interface Group {
  readonly name: string;
  readonly setups: Setup[];
}

let collected: CollectedTest[] = [];
let file: Group = { name: "", setups: [] };
let groups: readonly Group[] = [file];

/** Tests that the files imported since the last call have declared. */
export function takeCollected(): readonly CollectedTest[] {
  const taken = collected;
  collected = [];
  file = { name: "", setups: [] };
  groups = [file];
  return taken;
}

export function beforeAll(setup: Setup) {
  (groups.at(-1) ?? file).setups.push(once(setup));
}

export const describe = withEach((name, body) => {
  const outer = groups;
  groups = [...outer, { name, setups: [] }];
  body();
  groups = outer;
});

export const test = withEach((name, body) => {
  const within = groups;
  collected.push({
    name: [...within.slice(1).map((group) => group.name), name].join(" > "),
    run: async () => {
      for (const group of within) for (const setup of group.setups) await setup();
      return body();
    },
  });
});

export const it = test;

/** `each` calls the body once for each row, and tells rows apart by their place. */
function withEach(declare: (name: string, body: () => unknown) => void) {
  const plain = (name: string, ...rest: readonly unknown[]) => declare(name, bodyOf(rest));
  const each =
    (rows: readonly unknown[]) =>
    (name: string, ...rest: readonly unknown[]) => {
      const body: Body = bodyOf(rest);
      rows.forEach((row, at) => {
        declare(`${name} #${at + 1}`, () => (Array.isArray(row) ? body(...row) : body(row)));
      });
    };
  return Object.assign(plain, { each });
}

const bodyOf = (rest: readonly unknown[]) => {
  const body = rest.find((one): one is Body => typeof one === "function");
  if (body === undefined) throw new Error("A test or group has no body.");
  return body;
};

function once(setup: Setup): Setup {
  let done: { readonly result: unknown } | undefined;
  return () => {
    done ??= { result: setup() };
    return done.result;
  };
}
