import { describe, expect, it } from "vitest";
import { isPrintable } from "../../../src/study/reading/characters.js";
import { processorMilliseconds } from "../../trials/fuzz/fault.js";
import { serving } from "../serving.js";

const writer = { author: "Ada", note: "", origin: "api" } as const;

const bomb = [
  "a: &a [x, x, x, x, x, x, x, x, x, x]",
  ...[..."bcdefghi"].map(
    (name, index) => `${name}: &${name} [${Array(10).fill(`*${"abcdefgh"[index]}`).join(", ")}]`,
  ),
  "study: { name: *i }",
].join("\n");

const deep = 100_000;

/** Texts that do harm to readers who trust them, and no study. */
const texts: Record<string, string> = {
  "aliases that multiply": bomb,
  "an alias of itself": "study: &s { name: Lake, again: *s }",
  "merge keys that multiply": "a: &a { x: 1 }\nb: &b { <<: [*a, *a, *a] }\nstudy: { <<: [*b, *b, *b] }",
  "lists nested deep": `study: ${"[".repeat(deep)}`,
  "closed lists nested deep": `study: ${"[".repeat(deep)}${"]".repeat(deep)}`,
  "groups nested deep": `{"study":${'{"a":'.repeat(deep)}1${"}".repeat(deep)}}`,
  "lines nested deep": Array.from({ length: 1500 }, (_each, depth) => `${" ".repeat(depth)}a:`).join("\n"),
  "dashes nested deep": `study:\n  ${"- ".repeat(deep)}x`,
  "a key of the prototype":
    '{"__proto__":{"polluted":1},"study":{"__proto__":{"polluted":1}},"constructor":{"prototype":{"polluted":1}}}',
  "a key of the prototype in YAML":
    "__proto__: { polluted: 1 }\nstudy: { __proto__: { polluted: 1 } }\nconstructor: { prototype: { polluted: 1 } }",
  "tags of other languages":
    "study: !!js/function 'function () { return 1 }'\nlake: !!python/object/apply:os.system [ls]",
  "a path outside its folder":
    "study: { name: Lake }\nlake: { record: { origin: x, file: ../../../../etc/passwd } }",
};

const polluted = () => Reflect.get({}, "polluted");

describe("a study file of", () => {
  it.each(Object.keys(texts))("%s is refused in words, and harms nothing", async (kind) => {
    const { ask, studies } = await serving();
    const text = texts[kind] ?? "";
    const upload = new FormData();
    upload.set("study", new Blob([text]), "lake.yaml");
    const started = processorMilliseconds();
    const page = await ask("/studies", { method: "POST", body: upload });
    expect(page.status).toBe(400);
    const checked = await ask("/api/check", { method: "POST", body: text });
    expect([200, 400]).toContain(checked.status);
    expect(await checked.text()).not.toContain("root:");
    expect(processorMilliseconds() - started).toBeLessThan(2000);
    expect(polluted()).toBeUndefined();
    expect(studies.list().filter(({ isExample }) => !isExample)).toEqual([]);
  });

  it.each(Object.keys(texts))(
    "%s, kept unfinished, leaves each of its pages and the list in order",
    async (kind) => {
      const { ask, studies } = await serving();
      const { id } = studies.create(texts[kind] ?? "", writer);
      const own = `/studies/${id}`;
      for (const path of [
        "/",
        own,
        `${own}/edit/names`,
        `${own}/edit/structures`,
        `${own}/assumptions`,
        `${own}/revisions`,
        `${own}/results.json`,
      ]) {
        expect((await ask(path)).status, path).toBeLessThan(500);
      }
      const body = new URLSearchParams({ "#base": "1", "#expected": "1", "study/name": "Mended" });
      expect((await ask(`${own}/edit/names`, { method: "POST", body })).status).toBeLessThan(500);
      expect(await (await ask(`${own}/study`)).text()).toContain(
        studies.find(id)?.revision === 1 ? (texts[kind] ?? "").slice(0, 20) : "Mended",
      );
    },
  );
});

const names = [
  `</script><script>alert(1)</script><img src=x onerror=alert(1)>"><svg onload=alert(1)>`,
  "{{constructor.constructor('return process.env')()}}{{#with this}}{{lookup . 'assets'}}{{/with}} javascript:alert(1)",
];

describe("a study whose names are", () => {
  it.each(names)("%s shows them as they are typed", async (name) => {
    const { ask, studies } = await serving();
    const example = studies.find("example-ninemoss")?.text ?? "";
    const quoted = JSON.stringify(name);
    const text = example.replace(/^( *)name: .*$/m, `$1name: ${quoted}`);
    const kept = studies.create(text, { ...writer, author: name, note: name });
    for (const path of [
      "",
      "/report",
      "/edit/names",
      "/edit/structures",
      "/revisions",
      "/issues",
      "/forms",
    ]) {
      const page = await (await ask(`/studies/${kept.id}${path}`)).text();
      expect(page).not.toMatch(/<script>alert|<img|<svg onload|href="javascript/);
      if (path === "/revisions") expect(unescaped(page)).toContain(`<td>${name}</td>`);
    }
  });
});

const unescaped = (html: string) =>
  html.replace(/&(lt|gt|quot|amp|#x27|#x3D|#x60);/g, (whole) => entities[whole] ?? whole);
const entities: Record<string, string> = {
  ...{ "&lt;": "<", "&gt;": ">", "&quot;": '"', "&amp;": "&", "&#x27;": "'", "&#x3D;": "=", "&#x60;": "`" },
};

describe("a download", () => {
  it.each([
    'x"\r\nSet-Cookie: a=b',
    "../../etc/passwd",
    "湖 — Lac",
    'a"; filename="evil.exe',
    "con\u0000.yaml",
    ".",
  ])("of a study called %j has a plain name", async (name) => {
    const { ask, studies } = await serving();
    const fileName = isPrintable(name) ? name : undefined;
    const { id } = studies.create(`study: { name: ${JSON.stringify(name)} }`, writer, fileName);
    for (const path of ["study", "revisions/1/study"]) {
      const { headers, status } = await ask(`/studies/${encodeURIComponent(id)}/${path}`);
      expect(status).toBe(200);
      expect(headers.get("content-disposition")).toMatch(/^attachment; filename="[\w][\w.-]*\.yaml"$/);
      expect(headers.has("set-cookie")).toBe(false);
    }
  });
});

describe("an address", () => {
  it.each([
    "/studies/..%2f..%2fpackage.json",
    "/studies/__proto__",
    "/studies/constructor/study",
    "/studies/%00",
    "/studies/%ff",
    "/assets/fonts/..%2f..%2f..%2fpackage.json",
    "/assets/..%2f..%2fpackage.json",
    "/studies/example-ninemoss/forms/..%2f..%2fpackage.json",
    "/studies/example-ninemoss/issues/..%2f1.pdf",
    "/studies/example-ninemoss/edit/__proto__",
    "/studies/example-ninemoss/edit/structures/9999",
    "/studies/example-ninemoss/structures/template/__proto__.csv",
    "/studies/example-ninemoss/assumptions/constructor",
    "/studies/example-ninemoss/revisions/1e9",
    "/compare.json?left=__proto__&right=constructor",
    "/api/studies/__proto__",
    "/api/studies/constructor/text",
    "/api/assumptions/__proto__",
  ])("%s leads nowhere", async (path) => {
    const { ask } = await serving();
    expect([400, 404]).toContain((await ask(path)).status);
  });

  it("of endless length or number of parts is refused", async () => {
    const { ask } = await serving();
    expect((await ask(`/?q=${"a".repeat(20_000)}`)).status).toBe(431);
    expect((await ask(`/studies/example-ninemoss/assumptions?${"q=a&".repeat(3000)}`)).status).toBeLessThan(
      500,
    );
  });
});

describe("a form", () => {
  const sent = async (body: URLSearchParams | string) => {
    const served = await serving();
    const { id } = served.studies.create(served.studies.find("example-ninemoss")?.text ?? "", writer);
    const headers = { "Content-Type": "application/x-www-form-urlencoded" };
    const response = await served.ask(`/studies/${id}/edit/names`, {
      method: "POST",
      headers,
      body: String(body),
    });
    return { status: response.status, text: served.studies.find(id)?.text ?? "" };
  };
  const head = { "#base": "1", "#expected": "1" };

  it.each([
    "__proto__/polluted",
    "study/__proto__/polluted",
    "study/constructor/prototype/polluted",
    "constructor",
    "toString",
    `study/${"a/".repeat(5000)}b`,
  ])("with a field of the prototype or of endless depth, case %#, changes nothing by it", async (field) => {
    const { status, text } = await sent(new URLSearchParams({ ...head, [field]: "1" }));
    expect(status).toBeLessThan(500);
    expect(text).not.toContain("polluted");
    expect(polluted()).toBeUndefined();
  });

  it.each([
    "add:__proto__/polluted",
    "remove:study/__proto__",
    "up:constructor/prototype/1",
    "add:study/constructor",
    "open://elsewhere.example",
  ])("with the button %s changes nothing by it", async (act) => {
    const { status, text } = await sent(new URLSearchParams({ ...head, act }));
    expect(status).toBeLessThan(500);
    expect(text).not.toContain("polluted");
    expect(polluted()).toBeUndefined();
  });

  it("of too many fields or bytes is refused", async () => {
    expect((await sent("a=1&".repeat(20_001))).status).toBe(400);
    expect((await sent(`a=${"x".repeat(9 * 1024 * 1024)}`)).status).toBe(400);
  });

  it("that is no form is refused", async () => {
    expect((await sent("%")).status).toBe(400);
    expect((await sent("")).status).toBe(400);
  });
});
