import type { TracedPhase } from "../../study/traced/traced-found.js";

export const phaseNames: Readonly<Record<TracedPhase["phase"]["phase"], string>> = {
  suspicion: "Suspicion",
  confirmation: "Confirmation",
  delimiting: "Delimiting",
  structures: "Structures",
  restriction: "Restriction",
  treatment: "Treatment",
  "leaving-boats": "Leaving boats",
  levels: "Levels",
  watch: "Long watch",
  delisting: "Off the list",
};
