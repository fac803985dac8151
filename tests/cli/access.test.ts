import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { afterEach, describe, expect, it, vi } from "vitest";
import { isKey } from "../../src/app/keys.js";
import { accessCommand } from "../../src/cli/access-commands.js";
import { projectRoot } from "../../src/project-root.js";
import { accessStore } from "../../src/store/access.js";
import { storeConnection } from "../../src/store/connection.js";
import { folder } from "../store/places.js";

function atPlace() {
  const place = folder();
  vi.stubEnv("RAMP_AND_RACK_DATA", place);
  const printed: string[] = [];
  const access = (what: string, name?: string, role?: string) =>
    accessCommand(what, { name, role }, (text) => printed.push(text));
  return { place, printed, access };
}

afterEach(() => vi.unstubAllEnvs());

describe("the command for access", () => {
  it("makes a key, shows it once and keeps only what it can be checked by", async () => {
    const { place, printed, access } = atPlace();
    await access("add", "Ada Lovelace", "edit");
    const [told, key = ""] = printed;
    expect(told).toContain("Access key of Ada Lovelace, to edit");
    expect(key).toMatch(/^[a-z2-9]{5}(-[a-z2-9]{5}){5}$/);
    const connection = storeConnection(place);
    const kept = accessStore(connection).keyOf("ada lovelace");
    connection.close();
    if (!kept) throw new Error("not kept");
    expect(await isKey(key, kept)).toBe(true);
    expect(await isKey(`${key} `, kept)).toBe(false);
    expect(await isKey(`${key.startsWith("a") ? "b" : "a"}${key.slice(1)}`, kept)).toBe(false);
    // NIST SP 800-63B, 5.1.2.2: from 112 bits on no stretching is asked for; letters and digits without look-alikes are 31.
    expect(Math.log2(31) * key.slice(6).replaceAll("-", "").length).toBeGreaterThan(112);
    expect(JSON.stringify(kept)).not.toContain(key.slice(6));
  });

  it("lists who has a key and takes it back", async () => {
    const { printed, access } = atPlace();
    await access("add", "Ada", "read");
    await access("list");
    expect(printed.at(-1)).toMatch(/^read {2}since \d{4}-\d\d-\d\d {2}Ada$/);
    await access("remove", "Ada");
    expect(printed.at(-1)).toContain("It was the last");
    await expect(access("remove", "Ada")).rejects.toThrow('found "Ada"');
  });

  it.each([
    ["a second key for a name", "add", "Ada", "edit", "who has a key"],
    ["another role", "add", "Ben", "owner", '--role is "owner"; allowed: read or edit'],
    ["no name", "add", undefined, "edit", "NAME is missing"],
    ["a name of two lines", "add", "Ben\nAda", "edit", "allowed: 1 to 100 letters"],
    ["another word", "open", undefined, undefined, "allowed: add, list, remove"],
  ])("refuses %s", async (_what, word, name, role, told) => {
    const { access } = atPlace();
    await access("add", "Ada", "edit");
    await expect(access(word, name, role)).rejects.toThrow(told);
  });
});

describe("the server", () => {
  it("does not start where others can reach it and no key is set, and says why", () => {
    const { status, stderr } = spawnSync("node", [join(projectRoot, "dist", "web", "serve.js")], {
      encoding: "utf8",
      env: {
        ...process.env,
        RAMP_AND_RACK_DATA: folder(),
        RAMP_AND_RACK_HOST: "127.0.0.1.example",
        PORT: "0",
      },
    });
    expect(stderr).toContain("no access key is set");
    expect(stderr).toContain("ramp-and-rack access add NAME --role edit");
    expect(status).toBe(2);
  });
});
