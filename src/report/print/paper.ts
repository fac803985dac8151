import type { StudyDocument } from "../../study/format/schema.js";
import type { PrintSettings } from "./pdf.js";

/** Letter where the study is in US customary units, A4 elsewhere. @param edition for the footer, a draft that is kept nowhere if left out */
export function printSettings({ study }: StudyDocument, edition = editionText()): PrintSettings {
  return { title: study.name, paper: study.units === "us" ? "letter" : "a4", edition };
}

/** What the footer says of an edition; a file that is kept nowhere has no revision. */
export function editionText({ revision, issue }: { revision?: number; issue?: number } = {}): string {
  const which = revision === undefined ? [] : [`revision ${revision}`];
  return [...which, issue === undefined ? "draft, not issued" : `issue ${issue}`].join(" · ");
}
