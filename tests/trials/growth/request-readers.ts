import type { StudyEntry } from "#product/app/study-entry.js";
import { idFor } from "#product/app/study-names.js";
import { bearerKeyOf, sessionIdOf } from "#product/web/access/gate.js";
import { isKnownHost } from "#product/web/access/host-check.js";
import { isHeld, matchedRevision } from "#product/web/api/entity-tag.js";
import { authorOf } from "#product/web/author.js";
import type { Reader } from "./measure.js";
import { refusing } from "./refusing.js";

/** Node refuses longer headers, all of a request together. */
const most = 16 * 1024;
/** A study's name is cut before an id is made of it. */
const longestName = 200;

const entry: StudyEntry = {
  ...{ id: "lake", name: "Lake", fileName: "lake.yaml", isExample: false, isDamaged: false, state: "active" },
  ...{
    revision: 3,
    savedAt: "2026-01-02T03:04:05Z",
    author: "",
    note: "",
    origin: "form",
    createdAt: "2026-01-02",
  },
  ...{ stateChangedAt: "2026-01-02", text: "a: b\n".repeat(20_000) },
};

const known = new Set(["127.0.0.1"]);

/** Headers of requests, and ids from names. */
export const requestReaders: readonly Reader[] = [
  { name: "If-Match", most, read: refusing((text) => matchedRevision(text, entry)) },
  { name: "If-None-Match", most, read: (text) => isHeld(text, '"3-abc.active"') },
  { name: "Authorization", most, read: (text) => bearerKeyOf({ authorization: `Bearer ${text}` }) },
  { name: "the cookie of a session", most, read: (text) => sessionIdOf({ headers: { cookie: text } }) },
  {
    name: "the cookie of an author",
    most,
    read: (text) => authorOf({ headers: { cookie: `author=${text}` } }),
  },
  { name: "Host", most, read: (text) => isKnownHost(text, known) },
  { name: "an id from a name", most: longestName, read: idFor },
];
