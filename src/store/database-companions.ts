/** Endings of the files that SQLite keeps beside a database. */
export const companions: readonly string[] = ["-wal", "-shm", "-journal"];
