import { type IncomingMessage, request } from "node:http";
import { describe, expect, it } from "vitest";
import { accessSettings } from "../../../src/web/access/settings.js";
import { serving } from "../serving.js";

describe("where the server listens", () => {
  it("is this machine alone unless told otherwise", () => {
    expect(accessSettings({})).toMatchObject({
      host: "127.0.0.1",
      port: 4170,
      isLocal: true,
      isSecure: false,
    });
  });

  it.each([
    ["127.0.0.1", true],
    ["127.3.2.1", true],
    ["::1", true],
    ["localhost", true],
    ["192.168.1.20", false],
    ["127.0.0.1.example", false],
    ["lake.example", false],
    ["fe80::1", false],
  ])("%s is this machine alone: %s", (host, isLocal) => {
    expect(accessSettings({ RAMP_AND_RACK_HOST: host }).isLocal).toBe(isLocal);
  });

  it("is not this machine alone where readers come through another program", () => {
    expect(accessSettings({ RAMP_AND_RACK_ADDRESS: "https://lake.example" }).isLocal).toBe(false);
    expect(accessSettings({ RAMP_AND_RACK_ADDRESS: "http://localhost:81" }).isLocal).toBe(true);
  });

  it("lets nobody in while others could reach it and no key is set", async () => {
    const { ask } = await serving(":memory:", { RAMP_AND_RACK_ADDRESS: "https://lake.example" });
    expect((await ask("/api/studies")).status).toBe(401);
    expect((await ask("/")).status).toBe(303);
  });

  it.each([
    [{ PORT: "a" }, 'PORT: found "a"'],
    [{ PORT: "70000" }, 'PORT: found "70000"'],
    [{ RAMP_AND_RACK_HOST: "http://lake" }, 'RAMP_AND_RACK_HOST: found "http://lake"'],
    [{ RAMP_AND_RACK_HOST: "0.0.0.0" }, "RAMP_AND_RACK_ADDRESS: found nothing"],
    [{ RAMP_AND_RACK_ADDRESS: "lake.example" }, 'RAMP_AND_RACK_ADDRESS: found "lake.example"'],
    [{ RAMP_AND_RACK_ADDRESS: "https://lake.example/rack" }, "addresses without a path"],
  ])("refuses %j with its place", (environment, told) => {
    expect(() => accessSettings(environment)).toThrow(told);
  });
});

/** Asks with headers that fetch does not let through. */
function asking(base: string, path: string, method: string, headers: Record<string, string>) {
  return new Promise<{ status: number | undefined; text: string; headers: IncomingMessage["headers"] }>(
    (resolve, reject) => {
      const asked = request(base + path, { method, headers }, (response) => {
        let text = "";
        response.setEncoding("utf8").on("data", (part) => {
          text += part;
        });
        response.on("end", () => resolve({ status: response.statusCode, text, headers: response.headers }));
      });
      asked.on("error", reject).end();
    },
  );
}

describe("the name by which the server is asked", () => {
  it.each(["localhost", "localhost:4170", "127.0.0.1:9", "[::1]:4170", "LOCALHOST", "mussels.lake.example"])(
    "may be %s",
    async (host) => {
      const { base } = await serving(":memory:", { RAMP_AND_RACK_ADDRESS: "http://mussels.lake.example:81" });
      expect((await asking(base, "/sign-in", "GET", { host })).status).toBe(200);
    },
  );

  it.each([
    "rebound.example",
    "rebound.example:4170",
    "127.0.0.1.rebound.example",
    "localhost@rebound.example",
    "localhost:4170:1",
    "[::2]",
    "a b",
  ])("may not be %j, which another site could have made lead here", async (host) => {
    const { base } = await serving();
    const { status, text } = await asking(base, "/studies/example-ninemoss/copy", "POST", { host });
    expect(status).toBe(421);
    expect(text).toContain("This server is not known by that name");
  });
});

describe("a change", () => {
  const copying = async (headers: Record<string, string>, environment = {}) => {
    const { base } = await serving(":memory:", environment);
    const own = headers.origin === "own" ? { ...headers, origin: base } : headers;
    return (await asking(base, "/studies/example-ninemoss/copy", "POST", own)).status;
  };

  it.each([
    ["a program", {}],
    ["this server's own page", { origin: "own", "sec-fetch-site": "same-origin" }],
    ["this server's own page in an older browser", { origin: "own" }],
  ])("of %s is made", async (_who, headers) => {
    expect(await copying(headers)).toBe(303);
  });

  it.each([
    ["another site", { origin: "https://elsewhere.example", "sec-fetch-site": "cross-site" }],
    ["another site in an older browser", { origin: "https://elsewhere.example" }],
    ["another port of this machine", { origin: "http://127.0.0.1:1" }],
    ["another port that says so", { origin: "own", "sec-fetch-site": "same-site" }],
    ["a page that hides where it is from", { origin: "null" }],
    ["no readable origin", { origin: "http://" }],
  ])("of %s is refused", async (_who, headers) => {
    expect(await copying(headers)).toBe(403);
  });

  it("of a page behind https counts as its own although the program before this one asks by http", async () => {
    const environment = { RAMP_AND_RACK_ADDRESS: "https://mussels.lake.example" };
    expect(await copying({ origin: "https://mussels.lake.example" }, environment)).toBe(401);
    expect(await copying({ origin: "https://other.lake.example" }, environment)).toBe(403);
  });
});

describe("every page", () => {
  it.each(["/", "/sign-in", "/studies/none", "/api/studies", "/assets/style.css"])(
    "%s tells browsers what to refuse",
    async (path) => {
      const { base } = await serving();
      const { headers } = await asking(base, path, "GET", {});
      const policy = String(headers["content-security-policy"]);
      expect(policy).toContain("default-src 'none'");
      expect(policy).toContain("frame-ancestors 'none'");
      expect(policy).not.toMatch(/unsafe|https?:|\*/);
      expect(headers).toMatchObject({
        "x-content-type-options": "nosniff",
        "referrer-policy": "same-origin",
      });
      expect(headers).not.toHaveProperty("x-powered-by");
    },
  );
});
