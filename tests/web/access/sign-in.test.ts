import { beforeEach, describe, expect, it } from "vitest";
import { sessionLimits } from "../../../src/web/access/sessions.js";
import { locked } from "./locked.js";

let place: Awaited<ReturnType<typeof locked>>;

beforeEach(async () => {
  place = await locked();
});

const post = (cookie: string, body: Record<string, string> = {}) => ({
  method: "POST",
  headers: { cookie },
  body: new URLSearchParams(body),
});

describe("once a key is set", () => {
  it("pages lead to the sign-in page and back to where one was going", async () => {
    const sent = await place.ask("/studies/example-ninemoss?x=1");
    expect(sent.status).toBe(303);
    expect(sent.headers.get("location")).toBe("/sign-in?next=%2Fstudies%2Fexample-ninemoss%3Fx%3D1");
    const page = await (await place.ask(sent.headers.get("location") ?? "")).text();
    expect(page).toContain('name="next" value="/studies/example-ninemoss?x&#x3D;1"');
    const done = await place.signIn("ada", place.keys.ada, "/studies/example-ninemoss?x=1");
    expect(done.headers.get("location")).toBe("/studies/example-ninemoss?x=1");
  });

  it.each([
    "//elsewhere.example/",
    "https://elsewhere.example/",
    "/\\elsewhere.example",
    "\t//elsewhere.example",
    "javascript:alert(1)",
  ])("nobody is led to %j after signing in", async (next) => {
    const { headers } = await place.signIn("Ada", place.keys.ada, next);
    expect(new URL(headers.get("location") ?? "", place.base).origin).toBe(place.base);
    expect(headers.get("location")).toMatch(/^\/(?!\/)/);
  });

  it("the cookie is out of reach of scripts and other sites, and is not what is kept", async () => {
    const cookie = (await place.signIn("Ada", place.keys.ada)).headers.getSetCookie()[0] ?? "";
    expect(cookie).toMatch(
      /^session=[\w-]{43}; Max-Age=604800; Path=\/; Expires=[^;]+; HttpOnly; SameSite=Strict$/,
    );
    const kept = place.connection.read((database) =>
      database.prepare<[], Buffer>("SELECT digest FROM access_session").pluck().all(),
    );
    expect(kept).toHaveLength(1);
    expect(cookie).not.toContain(kept[0]?.toString("base64url"));
  });

  it("the cookie is for https alone where readers come by https", async () => {
    const secure = await locked({ RAMP_AND_RACK_ADDRESS: "https://mussels.lake.example" });
    const response = await secure.signIn("Ada", secure.keys.ada);
    expect(response.headers.getSetCookie()[0]).toContain("; Secure;");
    expect(response.headers.get("strict-transport-security")).toContain("max-age=");
  });

  it.each(["/studies/example-ninemoss/results.json", "/api/studies", "/api/openapi.json"])(
    "%s is refused to a program without a key",
    async (path) => {
      const response = await place.ask(path);
      expect(response.status).toBe(401);
      expect(response.headers.get("www-authenticate")).toBe("Bearer");
      expect(await response.json()).toMatchObject({ title: "Sign in first; nothing was changed" });
    },
  );

  it("changes are refused without a key, and nothing is changed", async () => {
    const response = await place.ask("/studies/example-ninemoss/copy", { method: "POST" });
    expect(response.status).toBe(401);
    expect(await response.text()).toContain("Sign in in another tab, then load this page again");
    expect(place.studies.list().filter(({ isExample }) => !isExample)).toEqual([]);
  });

  it("style sheets and fonts are served to the sign-in page", async () => {
    expect((await place.ask("/assets/style.css")).status).toBe(200);
  });
});

describe("who is signed in", () => {
  it("is the author of each save, whatever name is typed", async () => {
    const cookie = await place.in("ADA", place.keys.ada);
    const copied = await place.ask("/studies/example-ninemoss/copy", post(cookie, { author: "Mallory" }));
    expect(copied.status).toBe(303);
    const upload = new FormData();
    upload.set("study", new Blob([place.studies.find("example-ninemoss")?.text ?? ""]), "lake.yaml");
    const kept = await place.ask("/studies", { method: "POST", headers: { cookie }, body: upload });
    expect(kept.status).toBe(303);
    const authors = place.studies
      .list()
      .filter(({ isExample }) => !isExample)
      .map(({ author }) => author);
    expect(authors).toEqual(["Ada", "Ada"]);
  });

  it("is told on each page, with a way out that ends the session", async () => {
    const cookie = await place.in("Ada", place.keys.ada);
    const page = await (await place.ask("/", { headers: { cookie } })).text();
    expect(page).toContain('<span class="note">Ada</span> <button class="plain small">Sign out</button>');
    const left = await place.ask("/sign-out", post(cookie));
    expect(left.headers.getSetCookie()[0]).toContain("session=; Path=/; Expires=Thu, 01 Jan 1970");
    expect((await place.ask("/", { headers: { cookie } })).headers.get("location")).toContain("/sign-in");
  });

  it("with a key for reading sees pages and changes nothing", async () => {
    const cookie = await place.in("Ben", place.keys.ben);
    expect((await place.ask("/studies/example-ninemoss", { headers: { cookie } })).status).toBe(200);
    for (const path of [
      "/studies/example-ninemoss/copy",
      "/studies/new",
      "/studies",
      "/studies/example-ninemoss/issues",
    ]) {
      expect((await place.ask(path, post(cookie))).status, path).toBe(403);
    }
    const removed = await place.ask("/api/studies/example-ninemoss", {
      method: "DELETE",
      headers: { cookie },
    });
    expect(removed.status).toBe(403);
    expect(await (await place.ask("/", { headers: { cookie } })).text()).not.toContain("Make a new study");
  });

  it("with a key for reading may still have a study checked, which keeps nothing", async () => {
    const headers = { Authorization: `Bearer ${place.keys.ben}` };
    const text = place.studies.find("example-ninemoss")?.text ?? "";
    expect((await place.ask("/api/check", { method: "POST", headers, body: text })).status).toBe(200);
  });

  it("is signed out when the key is taken back", async () => {
    const cookie = await place.in("Ada", place.keys.ada);
    place.store.remove("ada");
    expect((await place.ask("/", { headers: { cookie } })).status).toBe(303);
    const headers = { Authorization: `Bearer ${place.keys.ada}` };
    expect((await place.ask("/api/studies", { headers })).status).toBe(401);
  });

  it.each([
    ["not used for a while", 1, sessionLimits.idle],
    ["old, although it is used", sessionLimits.whole / sessionLimits.idle + 1, sessionLimits.idle - 1],
  ])("must sign in again where the session is %s", async (_why, times, step) => {
    const cookie = await place.in("Ada", place.keys.ada);
    let status = 200;
    for (let time = 0; time < times; time += 1) {
      expect(status).toBe(200);
      place.clock.now = new Date(place.clock.now.getTime() + step);
      status = (await place.ask("/", { headers: { cookie } })).status;
    }
    expect(status).toBe(303);
  });

  it("comes back from a letter's link by one more request, since the browser keeps the cookie back at first", async () => {
    const headers = { "Sec-Fetch-Site": "cross-site" };
    const page = await (await place.ask("/sign-in?next=%2Fverify", { headers })).text();
    expect(page).toContain('<meta http-equiv="refresh" content="0; url=/sign-in?next&#x3D;%2Fverify">');
  });
});
