import { describe, expect, it } from "vitest";
import { smallLakeText } from "../study/small-lake.js";
import { raw, request } from "./raw.js";
import { serving } from "./serving.js";

const writer = { author: "Ada", note: "", origin: "api" } as const;

const part = (name: string, content = "text") =>
  `--x\r\nContent-Disposition: form-data; name="${name}"; filename="f"\r\n\r\n${content}\r\n`;

/** What is wrong with an upload, by its type and its body. */
const broken: Record<string, (field: string) => readonly [string, string]> = {
  "no boundary": (field) => ["multipart/form-data", `${part(field)}--x--\r\n`],
  "an empty boundary": (field) => ["multipart/form-data; boundary=", `${part(field)}--x--\r\n`],
  "another boundary": (field) => ["multipart/form-data; boundary=y", `${part(field)}--x--\r\n`],
  "no last line": (field) => ["multipart/form-data; boundary=x", part(field)],
  "a file that is cut off": (field) => ["multipart/form-data; boundary=x", part(field).slice(0, -4)],
  "a head that is cut off": (field) => ["multipart/form-data; boundary=x", part(field).slice(0, 30)],
  "a head that is none": () => [
    "multipart/form-data; boundary=x",
    "--x\r\nno head at all\r\n\r\n\r\n--x--\r\n",
  ],
  "no body": () => ["multipart/form-data; boundary=x", ""],
  "another kind": (field) => ["multipart/mixed; boundary=x", `${part(field)}--x--\r\n`],
  "a type that is none": (field) => ["multipart/form-data; boundary=x; =", `${part(field)}--x--\r\n`],
};

const routes = {
  "/studies": "study",
  "/verify": "report",
  "/studies/lake/structures/table": "file",
};

describe.each(Object.entries(routes))("an upload to %s", (path, field) => {
  it.each(Object.keys(broken))("with %s is told as the sender's mistake", async (kind) => {
    const { base, studies } = await serving();
    studies.create("study: { name: Lake }\n", writer);
    const [type, body] = broken[kind]?.(field) ?? [];
    const lines = [`POST ${path} HTTP/1.1`, "Host: localhost", `Content-Type: ${type}`];
    const { status, body: page } = await raw(base, request(lines, body));
    expect(page).not.toContain("Something went wrong on our side");
    expect(status).toBe(400);
    expect(studies.list().filter(({ isExample }) => !isExample)).toMatchObject([{ revision: 1 }]);
  });
});

it.each([
  ...[
    "multipart/form-data; boundary=x",
    'multipart/form-data; boundary="x"',
    "Multipart/Form-Data;boundary=x;",
  ],
  ...["multipart/form-data; charset=utf-8; boundary=x"],
])("an upload of the type %s is read", async (type) => {
  const { base, studies } = await serving();
  const bytes = Buffer.from(smallLakeText).toString("latin1");
  const lines = ["POST /studies HTTP/1.1", "Host: localhost", `Content-Type: ${type}`];
  const { status } = await raw(base, request(lines, `${part("study", bytes)}--x--\r\n`));
  expect(status).toBe(303);
  expect(studies.list().filter(({ isExample }) => !isExample)).toMatchObject([{ revision: 1 }]);
});

it("an upload to verify is read", async () => {
  const { base } = await serving();
  const lines = ["POST /verify HTTP/1.1", "Host: localhost", "Content-Type: multipart/form-data; boundary=x"];
  const { status, body } = await raw(base, request(lines, `${part("report")}--x--\r\n`));
  expect(status).toBe(200);
  expect(body).toContain("cannot be read as a PDF");
});
