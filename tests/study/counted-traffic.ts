import { readStudyText } from "../../src/study/reading/read.js";
import { editedText } from "./example.js";

export const csv = "date,hour,launches\n2024-07-06,8,12\n2024-07-08,8,5\n";
export const summer = { id: "summer", name: "Jun–Aug", months: ["jun", "jul", "aug"] };
export const counted = { csv, monthGroups: [summer], origin: "invented" };

/** Stations of the example whose day types are named in their hours, made to name none. */
export const anyDay = [
  ["options[weekends].open", [{ from: "07:00", to: "20:00" }]],
  ["options[full-season].open", [{ from: "07:00", to: "20:00" }]],
] as const;

export const study = (edits: Parameters<typeof editedText>[0]) =>
  readStudyText(editedText(edits), "study.yaml");
