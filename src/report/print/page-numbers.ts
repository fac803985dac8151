/** Places of a printed PDF that something links to: ids with the pages on which they stand, from 1. */
export type PageNumbers = ReadonlyMap<string, number>;

const treeNode = /(\d+) 0 obj\s*<<\/Type \/Pages[\s\S]*?\/Kids \[([^\]]*)\]([^>]*)>>/g;
/** Named: those of bookmarks, which the key Dest leads to, have no name. */
const destination = /\/(?!Dest )([\w-]+) \[(\d+) 0 R \/XYZ/g;

/** Reads them from a PDF as the browser writes it, in plain text, which takes a few milliseconds. */
export function pageNumbers(pdf: Uint8Array): PageNumbers {
  const text = Buffer.from(pdf).toString("latin1");
  const nodes = new Map<string, readonly string[]>();
  let root = "";
  for (const [, id = "", kids = "", rest = ""] of text.matchAll(treeNode)) {
    nodes.set(id, kids.match(/\d+(?= 0 R)/g) ?? []);
    if (!rest.includes("/Parent")) root = id;
  }
  const leaves = (id: string): readonly string[] => nodes.get(id)?.flatMap(leaves) ?? [id];
  const order = new Map(leaves(root).map((id, index) => [id, index + 1]));
  const found = [...text.matchAll(destination)].flatMap(([, name = "", page = ""]) => {
    const number = order.get(page);
    return number === undefined ? [] : [[name, number] as const];
  });
  return new Map(found);
}
