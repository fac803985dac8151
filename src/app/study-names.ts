export const examplePrefix = "example-";

/** Words that stand where an id stands in an address. */
const wordsOfAddresses = ["new", "archived", "deleted", "compare", "import", "template"];

const longestId = 60;

/** An id for a study of that name: letters, digits and hyphens, no example's and no word of an address. */
export function idFor(name: string): string {
  const words = name
    .normalize("NFKD")
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .slice(0, longestId)
    .replace(/^-+|-+$/g, "");
  if (words.startsWith(examplePrefix) || wordsOfAddresses.includes(words)) return `own-${words}`;
  return words || "study";
}

export const fileNameFor = (id: string): string => `${id}.yaml`;
