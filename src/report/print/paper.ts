import type { StudyDocument } from "../../study/format/schema.js";
import type { PrintSettings } from "./pdf.js";

/** The paper that the study states, else letter with US customary units and A4 with others. @param edition for the footer, a draft that is kept nowhere if left out */
export function printSettings(
  { study, report }: Pick<StudyDocument, "study" | "report">,
  edition = editionText(),
): PrintSettings {
  return { title: study.name, paper: report.paper ?? (study.units === "us" ? "letter" : "a4"), edition };
}

/** What the footer says of an edition; a file that is kept nowhere has no revision. */
export function editionText({ revision, issue }: { revision?: number; issue?: number } = {}): string {
  const which = revision === undefined ? [] : [`revision ${revision}`];
  return [...which, issue === undefined ? "draft, not issued" : `issue ${issue}`].join(" · ");
}
