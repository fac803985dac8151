import { allowedCharacters, unseenIn } from "./characters.js";
import { InputError, type Problem, pathText } from "./problems.js";

const mostShown = 20;

/** The first texts with unprintable characters, in a document of any state. */
export function characterProblems(document: unknown): Problem[] {
  const problems: Problem[] = [];
  // A YAML value may contain itself.
  const seen = new Set<object>();
  const follow = (value: unknown, at: readonly PropertyKey[]): void => {
    if (problems.length >= mostShown) return;
    if (typeof value === "string") {
      const found = unseenIn(value);
      if (found !== undefined)
        problems.push({ path: pathText(at, document), at, ...characterProblem(found) });
    } else if (typeof value === "object" && value !== null && !seen.has(value)) {
      seen.add(value);
      const keyOf = (key: string) => (Array.isArray(value) ? Number(key) : key);
      for (const [key, item] of Object.entries(value)) follow(item, [...at, keyOf(key)]);
    }
  };
  follow(document, []);
  return problems;
}

const characterProblem = (found: string) => ({
  found,
  allowed: allowedCharacters,
  remedy: "Take that character out.",
});

/**
 * Refuses unprintable characters in texts kept beside a study, such as author and file name.
 * @param texts by place
 * @throws InputError
 */
export function requirePrintable(subject: string, texts: Readonly<Record<string, string | undefined>>): void {
  const problems = Object.entries(texts).flatMap(([path, text]): Problem[] => {
    const found = unseenIn(text ?? "");
    return found === undefined ? [] : [{ path, ...characterProblem(found) }];
  });
  if (problems.length > 0) throw new InputError(subject, problems);
}
