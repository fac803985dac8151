import { readdirSync, readFileSync } from "node:fs";
import { basename, join } from "node:path";
import { once } from "../model/computed-once.js";
import { examplesFolder } from "../report/document/assets.js";
import type { StudyEntry } from "./study-entry.js";
import { examplePrefix } from "./study-names.js";

/** A lake to begin with; one not worth its program; one well worth it; one infested already. */
const shownOrder = ["sorrel-bend.yaml", "ninemoss.yaml", "copperhithe.yaml", "thistledown.yaml"];

/** Where they have their names: to read them as studies takes as long as all else at a start. */
const nameLine = /^study:\n {2}name: (.+)$/m;

/** The invented lakes, which nobody changes, read once. */
export const readExamples = once((): readonly StudyEntry[] =>
  readdirSync(examplesFolder)
    .filter((file) => file.endsWith(".yaml"))
    .sort((one, other) => shownOrder.indexOf(one) - shownOrder.indexOf(other))
    .map((fileName) => {
      const text = readFileSync(join(examplesFolder, fileName), "utf8");
      const name = nameLine.exec(text)?.[1] ?? fileName;
      return {
        id: `${examplePrefix}${basename(fileName, ".yaml")}`,
        name,
        isExample: true,
        isDamaged: false,
        revision: 1,
        state: "active",
        createdAt: "",
        stateChangedAt: "",
        savedAt: "",
        author: "",
        note: "",
        origin: "import",
        fileName,
        text,
      };
    }),
);
