import { spawn } from "node:child_process";
import { once } from "node:events";
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { projectRoot } from "../../src/project-root.js";
import { storeConnection } from "../../src/store/connection.js";
import { lockForServing } from "../../src/store/serving-lock.js";
import { studyStore } from "../../src/store/studies.js";
import { folder, written } from "./places.js";

describe("the lock of a data folder", () => {
  it("refuses a second server with the reason and the ways out, and frees the folder when released", () => {
    const place = folder();
    const first = lockForServing(place);
    expect(() => lockForServing(place)).toThrow(/Another server .* works on .*RAMP_AND_RACK_DATA/);
    first.release();
    lockForServing(place).release();
  });

  it("leaves the database to commands meanwhile", () => {
    const place = folder();
    const lock = lockForServing(place);
    const connection = storeConnection(place);
    expect(studyStore(connection).create(written("a")).revision).toBe(1);
    connection.close();
    lock.release();
  });

  it("is let go when the server is killed", async () => {
    const place = folder();
    const module = JSON.stringify(join(projectRoot, "dist", "store", "serving-lock.js"));
    const script = `import { lockForServing } from ${module};
      lockForServing(${JSON.stringify(place)}); console.log("held"); setInterval(() => undefined, 1000);`;
    const server = spawn(process.execPath, ["--input-type=module", "-e", script]);
    await once(server.stdout, "data");
    expect(() => lockForServing(place)).toThrow(/Another server/);
    const closed = once(server, "close");
    server.kill("SIGKILL");
    await closed;
    lockForServing(place).release();
  });

  it("tells where the folder cannot be made", () => {
    const file = join(folder(), "file");
    writeFileSync(file, "");
    expect(() => lockForServing(join(file, "data"))).toThrow(expect.objectContaining({ fault: "read-only" }));
  });
});

describe("a clock that was set back", () => {
  it("does not decide which revision is the latest", () => {
    const connection = storeConnection(":memory:");
    const store = studyStore(connection);
    store.create(written("today", { savedAt: "2026-05-01T00:00:00Z" }));
    store.save({ ...written("tomorrow", { savedAt: "2019-01-01T00:00:00Z" }), expected: 1 });
    expect(store.latest("lake")).toMatchObject({ revision: 2, text: "tomorrow" });
    expect(store.revisions("lake").map(({ revision }) => revision)).toEqual([2, 1]);
    connection.close();
  });
});
