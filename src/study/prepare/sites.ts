import type { LaunchSite } from "../../model/inputs.js";
import type { BoatsDocument } from "../format/boats-schema.js";

/** What stands for the sites of a study that names none. */
const wholeLake: LaunchSite = { id: "lake", name: "All ramps", share: 1 };

export function sitesOf({ sites }: Pick<BoatsDocument, "sites">): LaunchSite[] {
  return sites?.map(({ id, name, share }) => ({ id, name, share: share.value })) ?? [wholeLake];
}

/** Ids by which a study may name its sites. */
export const siteIdsOf = (sites: readonly LaunchSite[]): string[] =>
  sites.filter((site) => site !== wholeLake).map(({ id }) => id);
