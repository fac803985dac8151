import { describe, expect, it } from "vitest";
import { smallLakeText } from "../../study/small-lake.js";
import { draft, program } from "./program.js";

describe("making and reading a study", () => {
  it("keeps a complete study and tells where it is", async () => {
    const { send } = await program();
    const made = await send("POST", "/api/studies?author=Ada&note=first", { body: smallLakeText });
    expect(made.status).toBe(201);
    const address = made.response.headers.get("location") ?? "";
    const read = await send("GET", address);
    expect(read.reply).toMatchObject({
      revision: 1,
      author: "Ada",
      note: "first",
      text: smallLakeText,
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
    expect(
      (await send("PUT", "/api/studies/example-ninemoss", { body: smallLakeText, match: "*" })).status,
    ).toBe(404);
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
