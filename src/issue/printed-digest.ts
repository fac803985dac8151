import { extractText, getDocumentProxy } from "unpdf";

/** Whether a digest is printed on a page of a PDF: pages and attachments belong together only if it is. */
export async function isDigestPrinted(pdf: Uint8Array, digest: string): Promise<boolean> {
  try {
    const { text } = await extractText(await getDocumentProxy(new Uint8Array(pdf)), { mergePages: true });
    return text.replaceAll(/\s/g, "").includes(digest);
  } catch {
    return false;
  }
}
