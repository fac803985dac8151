import { truncateSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { databaseFile } from "../../../src/store/connection.js";
import type { Operation } from "../../../src/web/api/operation.js";
import { operationGroups } from "../../../src/web/api/operations.js";
import { folder } from "../../store/places.js";
import { exampleText } from "../../study/example.js";
import { smallLakeText } from "../../study/small-lake.js";
import { serving } from "../serving.js";

const example = smallLakeText;
const draft = "study: { name: Our lake } # 湖\r\n";

/** Descriptions are read, nothing is asked of them. */
const notAsked = {
  find: () => expect.fail("not asked"),
  knownOdds: () => expect.fail("not asked"),
  drawn: () => expect.fail("not asked"),
  drawnWithin: () => expect.fail("not asked"),
};

/** Asks as a program does, and holds each answer to the schema that describes it. */
async function program(place?: string) {
  const { ask, studies, parts, connection } = await serving(place);
  const operations = operationGroups({ ...parts, ...notAsked }).flatMap((group) => group.operations);
  const send = async (
    method: string,
    path: string,
    { body, match }: { body?: string; match?: string } = {},
  ) => {
    const headers = match === undefined ? {} : { "If-Match": match };
    const response = await ask(path, { method, headers, ...(body === undefined ? {} : { body }) });
    const reply: unknown = response.headers.get("content-type")?.includes("json")
      ? await response.json()
      : await response.text();
    if (response.ok) described(operations, method, path).reply.parse(reply);
    return { status: response.status, etag: response.headers.get("etag") ?? "", reply, response };
  };
  return { send, ask, studies, connection };
}

function described(operations: readonly Operation[], method: string, path: string): Operation {
  const [address = ""] = path.split("?");
  const found = operations.find(
    (each) =>
      each.method === method.toLowerCase() &&
      new RegExp(`^${each.path.replace(/\{\w+\}/g, "[^/]+")}$`).test(address),
  );
  if (!found) throw new Error(`${method} ${path} is not described`);
  return found;
}

describe("making and reading a study", () => {
  it("keeps a complete study and tells where it is", async () => {
    const { send } = await program();
    const made = await send("POST", "/api/studies?author=Ada&note=first", { body: example });
    expect(made.status).toBe(201);
    const address = made.response.headers.get("location") ?? "";
    const read = await send("GET", address);
    expect(read.reply).toMatchObject({
      revision: 1,
      author: "Ada",
      note: "first",
      text: example,
      problems: [],
    });
    expect(read.reply).toHaveProperty("document.lake.name", "Ninemoss Lake");
    expect(read.etag).toBe(made.etag);
  });

  it("refuses a study that is not complete, unless it is to be kept as it is", async () => {
    const { send, studies } = await program();
    const refused = await send("POST", "/api/studies", { body: draft });
    expect(refused.status).toBe(400);
    expect(refused.reply).toHaveProperty("problems");
    expect(studies.list().every(({ isExample }) => isExample)).toBe(true);
    const kept = await send("POST", "/api/studies?draft=true", { body: draft });
    expect(kept.reply).toMatchObject({
      id: "our-lake",
      text: draft,
      document: { study: { name: "Our lake" } },
    });
    expect(kept.reply).toHaveProperty("problems.0.path");
  });

  it("gives the file to the byte", async () => {
    const { send, ask } = await program();
    await send("POST", "/api/studies?draft=true", { body: `\ufeff${draft}` });
    const bytes = Buffer.from(await (await ask("/api/studies/our-lake/text")).arrayBuffer());
    expect(bytes.equals(Buffer.from(`\ufeff${draft}`))).toBe(true);
  });

  it("answers 304 to one who has it already, until it changes", async () => {
    const { send, ask, studies } = await program();
    const { etag } = await send("POST", "/api/studies?draft=true", { body: draft });
    const again = () => ask("/api/studies/our-lake", { headers: { "If-None-Match": etag } });
    expect((await again()).status).toBe(304);
    studies.setState("our-lake", "archived");
    expect((await again()).status).toBe(200);
  });

  it("lists studies by state", async () => {
    const { send } = await program();
    await send("POST", "/api/studies?draft=true", { body: draft });
    await send("POST", "/api/studies/our-lake/archive");
    expect((await send("GET", "/api/studies?state=archived")).reply).toMatchObject([{ id: "our-lake" }]);
    const wrong = await send("GET", "/api/studies?state=lost");
    expect(wrong).toMatchObject({
      status: 400,
      reply: { problems: [{ path: "state", found: '"lost"', allowed: "one of active, archived, deleted" }] },
    });
  });
});

describe("saving", () => {
  it("takes the tag of the revision that was read, and makes the next", async () => {
    const { send } = await program();
    const { etag } = await send("POST", "/api/studies?draft=true", { body: draft });
    const saved = await send("PUT", "/api/studies/our-lake?draft=true", {
      body: `${draft}lake:\n`,
      match: etag,
    });
    expect(saved).toMatchObject({ status: 200, reply: { revision: 2, origin: "api" } });
    expect(saved.etag).not.toBe(etag);
  });

  it("is refused without a tag", async () => {
    const { send, studies } = await program();
    await send("POST", "/api/studies?draft=true", { body: draft });
    const { status } = await send("PUT", "/api/studies/our-lake?draft=true", { body: "lake: 1" });
    expect(status).toBe(428);
    expect(studies.find("our-lake")?.revision).toBe(1);
  });

  it("is refused to the second of two, with both revisions, and overwrites nothing", async () => {
    const { send, studies } = await program();
    const { etag } = await send("POST", "/api/studies?draft=true", { body: draft });
    await send("PUT", "/api/studies/our-lake?draft=true&author=Ada", {
      body: `${draft}lake:\n`,
      match: etag,
    });
    const second = await send("PUT", "/api/studies/our-lake?draft=true", {
      body: `${draft}boats:\n`,
      match: etag,
    });
    expect(second).toMatchObject({
      status: 412,
      reply: {
        expected: 1,
        latest: 2,
        links: { expected: "/api/studies/our-lake/revisions/1", latest: "/api/studies/our-lake" },
      },
    });
    expect(JSON.stringify(second.reply)).toContain("saved by Ada");
    expect(studies.find("our-lake")?.text).toBe(`${draft}lake:\n`);
    const [theirs, mine] = ["/api/studies/our-lake", "/api/studies/our-lake/revisions/1"];
    expect((await send("GET", theirs)).reply).toHaveProperty("text", `${draft}lake:\n`);
    expect((await send("GET", mine)).reply).toHaveProperty("text", draft);
  });

  it.each(['"1-0123456789abcdef.active"', 'W/"1"', "nonsense"])(
    "is refused with the tag %s, which is none of this study's",
    async (match) => {
      const { send } = await program();
      await send("POST", "/api/studies?draft=true", { body: draft });
      expect((await send("PUT", "/api/studies/our-lake?draft=true", { body: "lake: 1", match })).status).toBe(
        412,
      );
    },
  );

  it("is refused for what is not complete, for examples, and for what is no text", async () => {
    const { send, ask } = await program();
    const { etag } = await send("POST", "/api/studies?draft=true", { body: draft });
    expect((await send("PUT", "/api/studies/our-lake", { body: "lake: 1", match: etag })).status).toBe(400);
    expect((await send("PUT", "/api/studies/example-ninemoss", { body: example, match: "*" })).status).toBe(
      404,
    );
    const latin = await ask("/api/studies?draft=true", {
      method: "POST",
      body: new Uint8Array([0x61, 0xe4]),
    });
    expect(await latin.json()).toMatchObject({ problems: [{ found: "bytes in another encoding" }] });
  });
});

describe("keeping", () => {
  it("restores an earlier revision as the next", async () => {
    const { send } = await program();
    const first = await send("POST", "/api/studies?draft=true", { body: draft });
    const second = await send("PUT", "/api/studies/our-lake?draft=true", {
      body: "lake: 1",
      match: first.etag,
    });
    const restore = "/api/studies/our-lake/revisions/1/restore?author=Bo";
    expect((await send("POST", restore, { match: first.etag })).status).toBe(412);
    expect((await send("POST", restore, { match: second.etag })).reply).toMatchObject({
      revision: 3,
      text: draft,
    });
    expect((await send("GET", "/api/studies/our-lake/revisions")).reply).toMatchObject([
      { revision: 3, author: "Bo", origin: "restore" },
      { revision: 2 },
      { revision: 1 },
    ]);
  });

  it("deletes with recovery, and refuses changes until then", async () => {
    const { send } = await program();
    await send("POST", "/api/studies?draft=true", { body: draft });
    const deleted = await send("DELETE", "/api/studies/our-lake");
    expect(deleted.reply).toMatchObject({ state: "deleted" });
    const change = { body: "lake: 1", match: deleted.etag };
    expect((await send("PUT", "/api/studies/our-lake?draft=true", change)).status).toBe(410);
    expect((await send("POST", "/api/studies/our-lake/recover")).reply).toMatchObject({ state: "active" });
    expect((await send("PUT", "/api/studies/our-lake?draft=true", change)).status).toBe(200);
  });

  it("copies an example", async () => {
    const { send } = await program();
    const copy = await send("POST", "/api/studies/example-ninemoss/copy?author=Ada");
    expect(copy).toMatchObject({ status: 201, reply: { origin: "copy", isExample: false, problems: [] } });
  });
});

describe("results and assumptions", () => {
  it("tells what is wrong in a text without keeping it", async () => {
    const { send } = await program();
    expect((await send("POST", "/api/check", { body: example })).reply).toEqual({
      complete: true,
      problems: [],
    });
    const wrong = example.replace("species: quagga", "species: carp");
    expect((await send("POST", "/api/check", { body: wrong })).reply).toMatchObject({
      complete: false,
      problems: [{ path: "lake.species", found: '"carp"' }],
    });
    expect((await send("POST", "/api/check", { body: "study: [" })).reply).toMatchObject({ complete: false });
  });

  it("gives results, assumptions with their sources, and overrides", async () => {
    const { send } = await program();
    const results = await send("GET", "/api/studies/example-ninemoss/results");
    expect(results.reply).toHaveProperty("study.name", "Ninemoss Lake, inspection program request");
    const { reply } = await send("GET", "/api/assumptions");
    expect(reply).toContainEqual(expect.objectContaining({ id: "cleaning.rack.visit", basis: "published" }));
  });

  it("compares a study with another", async () => {
    const { send } = await program();
    const dearer = exampleText("ninemoss").replace("species: quagga", "species: zebra");
    await send("POST", "/api/studies", { body: dearer });
    const id = "ninemoss-lake-inspection-program-request";
    const { reply } = await send("GET", `/api/comparison?left=example-ninemoss&right=${id}&rightRevision=1`);
    expect(reply).toMatchObject({
      left: { id: "example-ninemoss" },
      right: { id, revision: 1 },
      inputs: [{ left: "quagga", right: "zebra" }],
    });
    const { status } = await send("GET", "/api/comparison?left=example-ninemoss&right=none");
    expect(status).toBe(404);
  });
});

describe("overrides", () => {
  const address = "/api/studies/our-lake/overrides";
  const sent = (value: unknown, reason = "Our own") => JSON.stringify({ value, reason });

  it("are set with a reason, listed beside the usual value, and taken back, each as a revision", async () => {
    const { send, studies } = await program();
    const made = await send("POST", "/api/studies?draft=true", { body: draft });
    const set = await send("PUT", `${address}/protection.start-density?author=Ada`, {
      body: sent("3 %"),
      match: made.etag,
    });
    expect(set.status).toBe(200);
    const usual = studies.assumptions.entries.get("protection.start-density")?.value;
    const listed = await send("GET", address);
    expect(listed.reply).toEqual([
      { id: "protection.start-density", value: "3 %", reason: "Our own", usual, unit: "share" },
    ]);
    const reset = await send("DELETE", `${address}/protection.start-density`, { match: set.etag });
    expect(reset.reply).toMatchObject({ revision: 3 });
    expect((await send("GET", address)).reply).toEqual([]);
    expect(studies.revisions("our-lake").map(({ author, note }) => [author, note])).toEqual([
      ["", "Usual value of protection.start-density again"],
      ["Ada", "Own value of protection.start-density: Our own"],
      ["", ""],
    ]);
  });

  it.each([
    ["protection.start-density", sent("300 %"), "value"],
    ["protection.start-density", sent("3 %", " "), "reason"],
    ["protection.start", sent("3 %"), "id"],
    ["protection.start-density", "{", "the body"],
    ["protection.start-density", JSON.stringify({ value: 1, reason: "r", more: 1 }), "more"],
  ])("of %s with %s are refused at their place", async (assumption, body, path) => {
    const { send, studies } = await program();
    const { etag } = await send("POST", "/api/studies?draft=true", { body: draft });
    const refused = await send("PUT", `${address}/${assumption}`, { body, match: etag });
    expect(refused).toMatchObject({ status: 400, reply: { problems: [{ path }] } });
    expect(studies.find("our-lake")?.revision).toBe(1);
  });
});

describe("refusals", () => {
  it.each([
    ["GET", "/api/studies/none", 404],
    ["GET", "/api/none", 404],
    ["GET", "/api/studies/example-ninemoss/revisions/2", 404],
    ["GET", "/api/studies/example-ninemoss/revisions/two", 400],
    ["POST", "/api/studies", 400],
    ["DELETE", "/api/studies/example-ninemoss", 404],
  ])("of %s %s are JSON", async (method, path, status) => {
    const { ask } = await serving();
    const response = await ask(path, { method });
    expect(response.status).toBe(status);
    expect(await response.json()).toHaveProperty("title");
  });

  it("tell a damaged database with the way out", async () => {
    const place = folder();
    const { send, connection } = await program(place);
    await send("POST", "/api/studies?draft=true", { body: draft });
    connection.close();
    truncateSync(databaseFile(place), 5000);
    const { status, reply } = await send("GET", "/api/studies");
    expect(status).toBe(503);
    expect(JSON.stringify(reply)).toContain("ramp-and-rack restore FILE");
  });
});
