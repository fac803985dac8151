import type { LineGroup } from "../../model/program/groups.js";

/** Groups of a program's lines in the words of a budget. */
export const groupNames: Readonly<Record<LineGroup, string>> = {
  wages: "Wages",
  supervision: "Supervision",
  training: "Training",
  supplies: "Supplies",
  seals: "Seals",
  monitoring: "Monitoring",
  laboratory: "Laboratory",
  outreach: "Outreach",
  administration: "Administration",
  "hot-wash": "Hot wash",
  vehicles: "Vehicles",
  "site-works": "Site works",
  equipment: "Other equipment",
  other: "Other",
  "other-revenue": "Other revenue",
  fees: "Fees",
};

export const togetherText = (group: LineGroup): string => `${groupNames[group]} together`;
