import type { StudyDocument } from "../study/schema.js";
import type { PrintSettings } from "./pdf.js";

/** Letter where the study is in US customary units, A4 elsewhere. */
export function printSettings({ study }: StudyDocument): PrintSettings {
  return { title: study.name, paper: study.units === "us" ? "letter" : "a4" };
}
