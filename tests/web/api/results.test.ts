import { truncateSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { databaseFile } from "../../../src/store/connection.js";
import { folder } from "../../store/places.js";
import { exampleText } from "../../study/example.js";
import { smallLakeText } from "../../study/small-lake.js";
import { serving } from "../serving.js";
import { draft, program } from "./program.js";

describe("results and assumptions", () => {
  it("tells what is wrong in a text without keeping it", async () => {
    const { send } = await program();
    expect((await send("POST", "/api/check", { body: smallLakeText })).reply).toEqual({
      complete: true,
      problems: [],
    });
    const wrong = smallLakeText.replace("species: quagga", "species: carp");
    expect((await send("POST", "/api/check", { body: wrong })).reply).toMatchObject({
      complete: false,
      problems: [{ path: "lake.species", found: '"carp"' }],
    });
    expect((await send("POST", "/api/check", { body: "study: [" })).reply).toMatchObject({ complete: false });
  });

  it("tells a request with a key that it does not take which keys it takes", async () => {
    const { send } = await program();
    const told = async (body: object) =>
      (await send("POST", "/api/sweep", { body: JSON.stringify(body) })).reply;
    const allowed = (keys: string) => ({ problems: [{ found: "an unknown key", allowed: `only ${keys}` }] });
    expect(await told({ study: smallLakeText, sets: [] })).toMatchObject(allowed("study, set"));
    const set = [{ id: "arrival.shape", value: 2, values: [2] }];
    expect(await told({ study: smallLakeText, set })).toMatchObject(allowed("id, values"));
    expect((await send("GET", "/api/studies?page=2")).reply).toMatchObject(allowed("state"));
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
