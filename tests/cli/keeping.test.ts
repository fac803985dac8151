import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterEach, describe, expect, it, vi } from "vitest";
import {
  backupCommand,
  exportCommand,
  importCommand,
  listCommand,
  removeCommand,
  restoreCommand,
} from "../../src/cli/keeping-commands.js";
import { databaseFile, storeConnection } from "../../src/store/connection.js";
import { studyStore } from "../../src/store/studies.js";
import { flipBitIn } from "../store/harming.js";
import { folder, written } from "../store/places.js";
import { run, runProgram } from "./command.js";

/** A data folder of the commands, and what they print. */
function atPlace() {
  const place = folder();
  vi.stubEnv("RAMP_AND_RACK_DATA", place);
  const printed: string[] = [];
  return { place, printed, print: (text: string) => printed.push(text) };
}

afterEach(() => vi.unstubAllEnvs());

describe("the commands of keeping", () => {
  it("import and export a study file without losing a byte, although it is not complete", () => {
    const { place, printed, print } = atPlace();
    const [file, copy] = [join(place, "draft.yaml"), join(place, "copy.yaml")];
    const bytes = Buffer.from("\ufeffstudy: { name: Draft 湖 } # \u0000\r\n\n\t");
    writeFileSync(file, bytes);
    importCommand(file, "Ada", print);
    expect(printed[0]).toBe("Kept as draft.");
    expect(printed[1]).toContain("It is not complete yet");
    exportCommand("draft", { out: copy, revision: undefined }, print);
    expect(readFileSync(copy).equals(bytes)).toBe(true);
    expect(() => exportCommand("draft", { out: copy, revision: 2 }, print)).toThrow('found "draft"');
  });

  it("refuse to import what would lose bytes", () => {
    const { place, print } = atPlace();
    const file = join(place, "latin1.yaml");
    writeFileSync(file, Buffer.from([0x61, 0xe4, 0x62]));
    expect(() => importCommand(file, "", print)).toThrow(
      "found bytes in another encoding; allowed: text in UTF-8",
    );
  });

  it("back up and restore under a store that is in use", async () => {
    const { place, printed, print } = atPlace();
    const connection = storeConnection(place);
    const store = studyStore(connection);
    store.create(written("one"));
    const backup = join(place, "monday.sqlite");
    await backupCommand(backup, print);
    expect(printed.at(-1)).toContain("Backed up 1 study with 1 revision to");
    await expect(backupCommand(backup, print)).rejects.toThrow("which exists");
    store.save({ ...written("two"), expected: 1 });
    await restoreCommand(backup, print);
    expect(printed.at(-2)).toContain("Restored 1 study with 1 revision");
    expect(printed.at(-1)).toMatch(/^What was kept until now is in .*before-restore/);
    expect(store.latest("lake")?.text).toBe("one");
    await expect(restoreCommand(databaseFile(place), print)).rejects.toThrow("the database itself");
    connection.close();
  });

  it("tell a damaged revision in the list, in a backup and where it would be exported", async () => {
    const { place, printed, print } = atPlace();
    const connection = storeConnection(place);
    const store = studyStore(connection);
    store.create(written("the first"));
    store.save({ ...written("the second"), expected: 1 });
    connection.close();
    flipBitIn(databaseFile(place), "the second");
    listCommand(print);
    expect(printed).toContain("lake  revision 2  active  damaged  Lake");
    await backupCommand(join(place, "monday.sqlite"), print);
    expect(printed.at(-2)).toContain("Damaged (does not match the digest");
    expect(printed.at(-2)).toContain("revision 2 of lake");
    const out = join(place, "lake.yaml");
    const exportAt = (revision: number | undefined) => exportCommand("lake", { out, revision }, print);
    expect(() => exportAt(undefined)).toThrow("Revision 1 before it is sound: ramp-and-rack export lake");
    exportAt(1);
    expect(readFileSync(out, "utf8")).toBe("the first");
    await restoreCommand(join(place, "monday.sqlite"), print);
    expect(printed.filter((line) => line.includes("revision 2 of lake"))).toHaveLength(2);
  });

  it("say where they looked when there is nothing to back up or restore", async () => {
    const { place, print } = atPlace();
    await expect(backupCommand(join(place, "b"), print)).rejects.toThrow("RAMP_AND_RACK_DATA");
    await expect(restoreCommand(join(place, "b"), print)).rejects.toThrow(`no "${join(place, "b")}"`);
  });

  it("remove for good only what was deleted, and only when told twice", () => {
    const { place, printed, print } = atPlace();
    const connection = storeConnection(place);
    const store = studyStore(connection);
    store.create(written("one"));
    expect(() => removeCommand("lake", false, print)).toThrow("Add --permanently");
    expect(() => removeCommand("lake", true, print)).toThrow("no study is deleted");
    store.setState("lake", "deleted", "2026-01-02T00:00:00Z");
    listCommand(print);
    expect(printed).toContain("lake  revision 1  deleted  Lake");
    removeCommand("lake", true, print);
    expect(store.latest("lake")).toBeUndefined();
    connection.close();
  });

  it("tell a damaged database in one message, without a trace", () => {
    const place = folder();
    writeFileSync(databaseFile(place), "no database ".repeat(1000));
    const { status, stderr } = runProgram(["list"], { environment: { RAMP_AND_RACK_DATA: place } });
    expect(status).toBe(1);
    expect(stderr).toMatch(/^The database .* is damaged\..*\n$/);
  });

  it("tell a damaged revision in one message, without a trace", async () => {
    const { place } = atPlace();
    const connection = storeConnection(place);
    studyStore(connection).create(written("the first"));
    connection.close();
    flipBitIn(databaseFile(place), "the first");
    const { status, stderr } = await run("export", "lake", "--out", join(place, "lake.yaml"));
    expect(status).toBe(1);
    expect(stderr).toMatch(/^Revision 1 of "Lake" \(lake\) is damaged: .*take the study from a backup\.\n$/);
  });
});
