import { once } from "node:events";
import type { AddressInfo } from "node:net";
import express from "express";
import { describe, expect, it } from "vitest";
import { leadNowhereElse } from "../../../src/web/own-address.js";
import { raw, request } from "../raw.js";
import { serving } from "../serving.js";
import { locked } from "./locked.js";

describe("a request that names", () => {
  it.each([
    [
      "two hosts",
      ["GET /studies/example-ninemoss/study HTTP/1.1", "Host: localhost", "Host: rebound.example"],
    ],
    ["a host twice", ["GET /studies/example-ninemoss/study HTTP/1.1", "Host: localhost", "Host: localhost"]],
    ["two hosts in other letters", ["GET / HTTP/1.1", "host: rebound.example", "HOST: localhost"]],
    ["no host", ["GET / HTTP/1.1"]],
    ["no host, as of old", ["GET / HTTP/1.0"]],
    ["an address of another host", ["GET http://rebound.example/ HTTP/1.1", "Host: localhost"]],
    ["an address with a user", ["GET http://localhost@rebound.example/ HTTP/1.1", "Host: localhost"]],
    ["an address of another scheme", ["GET ftp://localhost/ HTTP/1.1", "Host: localhost"]],
    ["an address of ours for another host", ["GET http://localhost/ HTTP/1.1", "Host: rebound.example"]],
    ["another of our names in its address", ["GET http://127.0.0.1/ HTTP/1.1", "Host: localhost"]],
    ["a path without its slash", ["GET studies HTTP/1.1", "Host: localhost"]],
  ])("%s is refused", async (_what, lines) => {
    const { base } = await serving();
    const { status, body } = await raw(base, request(lines));
    expect([400, 421]).toContain(status);
    expect(body).not.toContain("Ninemoss");
  });

  it.each([
    ["an address of ours", ["GET http://localhost:4170/sign-in HTTP/1.1", "Host: localhost:4170"]],
    ["an address of ours in large letters", ["GET HTTP://LOCALHOST/sign-in HTTP/1.1", "Host: localhost"]],
    ["its path", ["GET /sign-in HTTP/1.1", "Host: localhost"]],
  ])("%s is answered", async (_what, lines) => {
    const { base } = await locked();
    expect((await raw(base, request(lines))).status).toBe(200);
  });
});

/** Ways to write the address of another site so that a reader of paths takes it for one of ours. */
const elsewhere = [
  "//evil.example",
  "///evil.example",
  "/\\evil.example",
  "\\\\evil.example",
  "/.//evil.example",
  "/x/..//evil.example",
  "/%2F%2Fevil.example",
  "/%5Cevil.example",
  "/%09/evil.example",
  "%0d%0aLocation: https://evil.example",
  "/%0d%0aSet-Cookie:%20a=b",
  "https:evil.example",
  "http:\\\\evil.example",
  "http://127.0.0.1@evil.example/",
  "http://here.invalid@evil.example/",
  "//evil.example%2f..",
];

/** Where a browser goes that is at `base`. */
const leadsTo = (location: string | undefined, base: string) => new URL(location ?? "", base).origin;

describe("a redirect never leaves the server", () => {
  it.each(elsewhere)("after signing in with next %j", async (next) => {
    const { base, keys } = await locked();
    for (const body of [
      new URLSearchParams({ name: "Ada", key: keys.ada, next }).toString(),
      `name=Ada&key=${keys.ada}&next=${next}`,
      `name=Ada&key=${keys.ada}&next=/&next=${encodeURIComponent(next)}`,
    ]) {
      const lines = [
        "POST /sign-in HTTP/1.1",
        "Host: localhost",
        "Content-Type: application/x-www-form-urlencoded",
      ];
      const { status, headers } = await raw(base, request(lines, body));
      expect(status).toBe(303);
      expect(leadsTo(headers.get("location"), base)).toBe(base);
      expect(headers.get("location")).not.toMatch(/^\/\/|[\r\n\\]/);
      expect(headers.get("set-cookie") ?? "").not.toContain("a=b");
    }
  });

  it.each(elsewhere)("from a page that is %j itself, where nobody is signed in", async (next) => {
    const { base } = await locked();
    for (const target of [next, `/sign-in?next=${next}`, `/sign-in/?next=${next}`]) {
      const { headers } = await raw(
        base,
        request([`GET ${target.replaceAll(" ", "%20")} HTTP/1.1`, "Host: localhost"]),
      );
      const location = headers.get("location");
      if (location === undefined) continue;
      expect(leadsTo(location, base)).toBe(base);
      const then = await raw(
        base,
        request([`GET ${location} HTTP/1.1`, "Host: localhost", "Sec-Fetch-Site: cross-site"]),
      );
      expect(then.body).not.toMatch(/http-equiv="refresh" content="0; url=(?!\/(?!\/))/);
    }
  });

  it.each(elsewhere)("where no key is set and the sign-in page leads on to %j at once", async (next) => {
    const { base } = await serving();
    const { status, headers } = await raw(
      base,
      request([`GET /sign-in?next=${encodeURIComponent(next)} HTTP/1.1`, "Host: localhost"]),
    );
    expect(status).toBe(303);
    expect(leadsTo(headers.get("location"), base)).toBe(base);
  });

  it.each([
    ...[
      "//evil.example/copy",
      "/\\evil.example/copy",
      "/studies//evil.example/copy",
      "/studies/%2F%2Fevil.example/copy",
    ],
    ...["/studies/%5C%5Cevil.example/archive", "/studies/..%2F..%2F%2Fevil.example/delete"],
  ])("after a change sent to %s", async (path) => {
    const { base } = await serving();
    const { status, headers } = await raw(base, request([`POST ${path} HTTP/1.1`, "Host: localhost"]));
    expect(headers.has("location")).toBe(false);
    expect(status).toBe(404);
  });
});

describe("a route that sends a reader where it was told", () => {
  it.each(elsewhere)("to %j sends him to a page of this server", async (address) => {
    const app = express();
    app.use(leadNowhereElse);
    app.get("/go", (_request, response) => response.redirect(303, address));
    const server = app.listen(0, "127.0.0.1");
    await once(server, "listening");
    const base = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
    const { headers } = await raw(base, request(["GET /go HTTP/1.1", "Host: localhost"]));
    server.close();
    expect(leadsTo(headers.get("location"), base)).toBe(base);
  });
});
