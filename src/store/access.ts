import type { Database } from "better-sqlite3";
import type { StoreConnection } from "./connection.js";

/** "read" sees everything and changes nothing. */
export type AccessRole = "read" | "edit";

/** Whom a key lets in. */
interface AccessCard {
  /** Stands beside what its owner saves. Large and small letters are the same name. */
  readonly name: string;
  readonly role: AccessRole;
  /** ISO 8601, UTC. */
  readonly addedAt: string;
}

/** A key as it is kept: what it is cannot be found from this. */
export interface KeptAccessKey extends AccessCard {
  /** First part of the key, by which a program's key is found. */
  readonly locator: string;
  readonly salt: Uint8Array;
  readonly hash: Uint8Array;
  /** Parameters of scrypt with which the hash was made. */
  readonly cost: number;
  readonly blockSize: number;
  readonly parallelization: number;
}

/** Someone who signed in. Times are in milliseconds since 1970. */
interface KeptSession {
  /** Of the id that the browser holds. */
  readonly digest: Uint8Array;
  readonly name: string;
  readonly startedAt: number;
  readonly usedAt: number;
}

/** Access keys and who is signed in. All throw StoreError. */
export interface AccessStore {
  readonly list: () => AccessCard[];
  readonly hasKeys: () => boolean;
  readonly keyOf: (name: string) => KeptAccessKey | undefined;
  readonly keyAt: (locator: string) => KeptAccessKey | undefined;
  /** @returns false, with nothing kept, where the name has a key already */
  readonly add: (key: KeptAccessKey) => boolean;
  /** Takes a key away and signs its owner out. @returns false where there was none */
  readonly remove: (name: string) => boolean;
  readonly session: (digest: Uint8Array) => (KeptSession & Pick<AccessCard, "role">) | undefined;
  /** Keeps a session in place of those that ended before. */
  readonly begin: (session: KeptSession, endedBefore: Pick<KeptSession, "startedAt" | "usedAt">) => void;
  readonly touch: (digest: Uint8Array, usedAt: number) => void;
  readonly end: (digest: Uint8Array) => void;
}

const columns = `name, role, added_at AS addedAt, locator, salt, hash, cost, block_size AS blockSize, parallelization`;

export function accessStore({ read, write }: StoreConnection): AccessStore {
  const keyBy = (column: "name" | "locator", value: string) =>
    read((database) =>
      database
        .prepare<[string], KeptAccessKey>(`SELECT ${columns} FROM access_key WHERE ${column} = ?`)
        .get(value),
    );
  return {
    list: () =>
      read((database) =>
        database
          .prepare<[], AccessCard>("SELECT name, role, added_at AS addedAt FROM access_key ORDER BY name")
          .all(),
      ),
    hasKeys: () =>
      read((database) => database.prepare("SELECT EXISTS (SELECT 1 FROM access_key)").pluck().get() === 1),
    keyOf: (name) => keyBy("name", name),
    keyAt: (locator) => keyBy("locator", locator),
    add: (key) => write((database) => addKey(database, key)),
    remove: (name) =>
      write((database) => database.prepare("DELETE FROM access_key WHERE name = ?").run(name).changes > 0),
    ...sessionStore({ read, write }),
  };
}

type Connecting = Pick<StoreConnection, "read" | "write">;

function sessionStore({ read, write }: Connecting): Pick<AccessStore, "session" | "begin" | "touch" | "end"> {
  const run = (sql: string, ...values: readonly (Uint8Array | number | string)[]) =>
    write((database) => {
      database.prepare(sql).run(...values);
    });
  return {
    session: (digest) =>
      read((database) =>
        database
          .prepare<[Uint8Array], KeptSession & Pick<AccessCard, "role">>(
            `SELECT digest, access_key.name AS name, role, started_at AS startedAt, used_at AS usedAt
             FROM access_session JOIN access_key USING (name) WHERE digest = ?`,
          )
          .get(digest),
      ),
    begin: ({ digest, name, startedAt, usedAt }, before) =>
      write((database) => {
        database
          .prepare("DELETE FROM access_session WHERE started_at < ? OR used_at < ?")
          .run(before.startedAt, before.usedAt);
        database
          .prepare("INSERT INTO access_session VALUES (?, ?, ?, ?)")
          .run(digest, name, startedAt, usedAt);
      }),
    touch: (digest, usedAt) => run("UPDATE access_session SET used_at = ? WHERE digest = ?", usedAt, digest),
    end: (digest) => run("DELETE FROM access_session WHERE digest = ?", digest),
  };
}

function addKey(database: Database, key: KeptAccessKey): boolean {
  return (
    database
      .prepare<[KeptAccessKey]>(
        `INSERT INTO access_key (${columns.replace(/(\w+) AS \w+/g, "$1")})
         VALUES (@name, @role, @addedAt, @locator, @salt, @hash, @cost, @blockSize, @parallelization)
         ON CONFLICT (name) DO NOTHING`,
      )
      .run(key).changes > 0
  );
}
