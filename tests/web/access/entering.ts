import { accessStore } from "../../../src/store/access.js";
import { type StoreConnection, storeConnection } from "../../../src/store/connection.js";
import { type Door, door } from "../../../src/web/access/door.js";
import { type AccessSettings, accessSettings } from "../../../src/web/access/settings.js";
import { slowing } from "../../../src/web/access/slowing.js";

/** The way in to an application in a test: open until a key is added to its store. @param wait before a wrong key is answered */
export function accessIn(
  connection: StoreConnection = storeConnection(":memory:"),
  now = () => new Date(),
  environment: Readonly<Record<string, string>> = {},
  wait = (_milliseconds: number): Promise<unknown> => Promise.resolve(),
): { readonly door: Door; readonly settings: AccessSettings } {
  const settings = accessSettings(environment);
  return { door: door(accessStore(connection), now, !settings.isLocal, slowing(wait)), settings };
}
