import { labelOf } from "./labels.js";

/** What is found is quoted as it was typed; keys and dotted places around it are those of the file. */
const quoted = /("(?:[^"\\]|\\.)*"|“[^”]*”)/;
const key = /\b(?:[a-z]+\.)*([a-z]{2,}[A-Z][a-z]\w*)\b(?!\()/g;
/** A list of the study, and a field in a section of it, by their places in the file. */
const listed = /\b(?:an|the) id (?:from|of) (?:(?:lake|boats|money)\.)([a-z]\w*)\b(?![.-])/gi;
const inSection = /\b(?:study|lake|boats|money|report)\.([a-z]\w*)\b(?![.-]?\w)/gi;

/** Messages and descriptions in the words of the pages: keys of the file become the labels of their fields. */
export const pageWords = (text: string): string =>
  text
    .split(quoted)
    .map((part, index) => (index % 2 === 1 ? part : inLabels(part)))
    .join("");

const inLabels = (text: string) =>
  text
    .replace(
      /\b(?:an id|the id) from money\.bearers/g,
      "one of those who are named under “Money and who pays”",
    )
    .replace(/\bor ids with shares such as \{[^}]*\}/g, "or several of them with shares")
    .replace(/\ban id from boats\.classes/g, "one of the vessel classes, which are named under “Boats”")
    .replace(/\b(?:an|the) id of (an?) /g, "$1 ")
    .replace(listed, (_all, name: string) => `one of those under “${labelOf(name)}”`)
    .replace(inSection, (_all, name: string) => `“${labelOf(name)}”`)
    .replace(/\btrue or false\b/g, "Yes or No")
    .replace(/\bfound (true|false)\b/gi, (_all, value: string) => `found ${value === "true" ? "Yes" : "No"}`)
    .replace(key, (_all, name: string) => `“${labelOf(name)}”`);
