import { editedParts, keptParts, readParts } from "./workbench-parts.js";

/** The parts of a study, for pages outside of its workbench: they lead back to all of it. */
export const studyMenu = (id: string, name: string): object => ({
  name,
  href: `/studies/${id}`,
  groups: [editedParts, readParts, keptParts].map((parts) => ({
    links: parts.map((part) => ({ name: part.name, href: `/studies/${id}${part.path}` })),
  })),
});
