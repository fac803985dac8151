import { randomUUID } from "node:crypto";
import type { ErrorRequestHandler, Request } from "express";
import { LRUCache } from "lru-cache";
import multer from "multer";
import { largestExportBytes } from "../../study/exports/export-table.js";
import { exportText } from "../../study/exports/file-text.js";
import { isPrintable } from "../../study/reading/characters.js";
import { InputError, type Problem, sentence } from "../../study/reading/problems.js";

interface WaitingFile {
  readonly name: string;
  readonly text: string;
  /** The answers with which it was last shown; absent before it is. */
  readonly shown: string | undefined;
}

export interface SentFile extends WaitingFile {
  readonly token: string;
}

interface FormToMend<Form> {
  readonly form: Form;
  /** Of the file. */
  readonly name?: string;
  readonly problems: readonly string[];
}

/** Characters of all files that wait, and how long they do. */
const mostCharacters = 2 * largestExportBytes;
const waitingMilliseconds = 20 * 60 * 1000;
const longestName = 120;
/** Three for each word that is mapped: a file of work orders may name hundreds of structures. */
const mostFields = 5000;

/** Takes a form with an exported file in it. */
export const exportUpload = multer({
  storage: multer.memoryStorage(),
  defParamCharset: "utf8",
  limits: {
    fileSize: largestExportBytes,
    fieldSize: 10_000,
    files: 1,
    fields: mostFields,
  },
}).single("file");

/** What is sent here is no study, whose limit is told elsewhere. */
export const tooLarge: ErrorRequestHandler = (error: unknown, _request, _response, next) => {
  if (!(error instanceof multer.MulterError) || error.code !== "LIMIT_FILE_SIZE") return next(error);
  const allowed = `at most ${largestExportBytes / 2 ** 20} MB`;
  const remedy = "Export fewer years, or daily means.";
  next(new InputError("The file", [{ path: "the file", found: "a larger file", allowed, remedy }]));
};

/** Files wait here from when they are chosen until what is read of them is kept. */
export class WaitingFiles {
  readonly #files = new LRUCache<string, WaitingFile>({
    maxSize: mostCharacters,
    sizeCalculation: ({ text }) => text.length + 1,
    ttl: waitingMilliseconds,
  });

  /** The file that comes with a form, or the one that was sent before it, by its token. */
  #sent({ file }: Pick<Request, "file">, token: string): SentFile | { readonly problem: string } {
    if (!file || file.size === 0) {
      const known = this.#files.get(token);
      if (known) return { ...known, token };
      const again = token === "" ? "" : " The one sent before is no longer waiting.";
      return {
        problem: `The file: found ${file ? "an empty file" : "no file"}; allowed: an exported file.${again} Choose it.`,
      };
    }
    try {
      const name = file.originalname.slice(0, longestName);
      const text = exportText(file.buffer, file.originalname);
      const found = {
        name: isPrintable(name) ? name : "the file",
        text,
        shown: undefined,
      };
      const fresh = randomUUID();
      this.#files.set(fresh, found);
      return { ...found, token: fresh };
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      return { problem: error.problems.map(sentence).join(" ") };
    }
  }

  /** A form with its file, or with what is wrong with either: what was typed and the file stay. */
  with<Form extends { readonly upload: string }>(
    request: Pick<Request, "file">,
    form: Form,
    wrong: readonly Problem[],
  ): { readonly file: SentFile } | FormToMend<Form> {
    const file = this.#sent(request, form.upload);
    const told = wrong.map(sentence);
    if ("problem" in file) return { form: { ...form, upload: "" }, problems: [file.problem, ...told] };
    if (told.length === 0) return { file };
    return { form: { ...form, upload: file.token }, name: file.name, problems: told };
  }

  /** Notes the answers with which a file is shown: what is kept has been seen. */
  show({ token, name, text }: SentFile, answers: string): void {
    this.#files.set(token, { name, text, shown: answers });
  }
}
