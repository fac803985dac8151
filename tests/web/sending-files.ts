import { serving } from "./serving.js";

export type Fields = ReadonlyArray<readonly [string, string]>;

/** A study, and one of its pages of records, to which its form is sent with a file. */
export async function sendingFiles(study: string, page: string, usualName: string) {
  const served = await serving();
  const { id } = served.studies.create(study, { author: "", note: "", origin: "upload" });
  const send = (fields: Fields, file?: string | Uint8Array<ArrayBuffer>, name = usualName) => {
    const form = new FormData();
    for (const [key, value] of fields) form.append(key, value);
    if (file !== undefined) form.set("file", new Blob([file]), name);
    return served.ask(`/studies/${id}/${page}`, { method: "POST", body: form });
  };
  return { ...served, id, send };
}

/** The token of the file that a page of records has been sent. */
export const uploadIn = (page: string): string => /name="upload" value="([^"]*)"/.exec(page)?.[1] ?? "";
