import type { LaunchSite } from "../../model/inputs.js";
import type { BoatsDocument } from "../format/boats-schema.js";

/** The site of a study that names none. */
const wholeLake: LaunchSite = { id: "lake", name: "All ramps", share: 1 };

export function sitesOf({ sites }: Pick<BoatsDocument, "sites">): LaunchSite[] {
  return sites?.map(({ id, name, share }) => ({ id, name, share: share.value })) ?? [wholeLake];
}

/** Ids that a study may use for its sites. */
export const siteIdsOf = (sites: readonly LaunchSite[]): string[] =>
  sites.filter((site) => site !== wholeLake).map(({ id }) => id);
