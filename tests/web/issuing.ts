import { type StoreConnection, storeConnection } from "../../src/store/connection.js";
import { issueStore } from "../../src/store/issues.js";

/** What the application issues reports with, on a day in January. */
export const issuingIn = (connection: StoreConnection = storeConnection(":memory:")) => ({
  issues: issueStore(connection),
  now: () => new Date("2026-01-02T03:04:05Z"),
});
