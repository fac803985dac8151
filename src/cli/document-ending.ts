import { extname } from "node:path";
import { InputError } from "../study/reading/problems.js";

/** What kind of document a file name asks for. @throws InputError */
export function documentEnding(out: string): ".pdf" | ".html" {
  const ending = extname(out).toLowerCase();
  if (ending === ".pdf" || ending === ".html") return ending;
  throw new InputError("the command", [
    {
      path: "--out",
      found: `"${out}"`,
      allowed: "a file name that ends in .pdf or .html",
      remedy: "Change the ending.",
    },
  ]);
}
