import { readFileSync, writeFileSync } from "node:fs";
import type { Server } from "node:http";
import type { AddressInfo } from "node:net";
import { afterAll, beforeAll, expect, it } from "vitest";
import { askedRuns, usualRuns } from "../../src/app/runs.js";
import { studiesOf } from "../../src/app/studies.js";
import { storeConnection } from "../../src/store/connection.js";
import { studyStore } from "../../src/store/studies.js";
import { createApp } from "../../src/web/app.js";
import { onePagePrinter } from "../issue/issued.js";
import { assumptions } from "../report/runs.js";
import { smallLakeText } from "../study/small-lake.js";
import { inventedOdds } from "../trials/invented-odds.js";
import { accessIn } from "./access/entering.js";
import { answersInTest } from "./answering.js";
import { issuingIn } from "./issuing.js";
import { inventedSwings } from "./judging.js";

const connection = storeConnection(":memory:");
const issuing = issuingIn(connection);
const uploader = { author: "", note: "", origin: "upload" } as const;
let server: Server;
let base = "";
let study = "";

beforeAll(async () => {
  const studies = studiesOf(studyStore(connection), () => assumptions, issuing.now);
  const runs = askedRuns({ ...usualRuns, draw: inventedOdds });
  const app = createApp({
    answers: answersInTest(),
    studies,
    printer: onePagePrinter,
    runs,
    few: runs,
    search: () => Promise.reject(new Error("no search here")),
    judge: inventedSwings,
    issuing,
    access: accessIn(connection),
    report: (error) => expect.fail(String(error)),
  });
  server = app.listen(0, "127.0.0.1");
  await new Promise((resolve) => server.once("listening", resolve));
  base = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
  study = `/studies/${studies.create(smallLakeText, uploader, "n.yaml").id}`;
});

afterAll(async () => {
  await new Promise((resolve) => server.close(resolve));
  connection.close();
});

const get = async (path: string) => (await fetch(base + path)).text();

function issue(note: string): Promise<Response> {
  const body = new URLSearchParams({ author: "Ada", note });
  return fetch(`${base}${study}/issues`, { method: "POST", body, redirect: "manual" });
}

function verify(file: Uint8Array): Promise<string> {
  const body = new FormData();
  body.set("report", new Blob([Buffer.from(file)]), "report.pdf");
  return fetch(`${base}/verify`, { method: "POST", body }).then((response) => response.text());
}

it("issues a report, supersedes it by the next, and verifies either", async () => {
  expect(await get(`${study}/issues`)).toContain("None yet.");
  expect((await issue("for <i>January</i>")).status).toBe(303);
  expect((await issue("mended")).headers.get("location")).toBe(`${study}/issues`);
  const list = await get(`${study}/issues`);
  expect(list).toMatch(/superseded by issue \d/);
  expect(list).toContain("for &lt;i&gt;January");
  const response = await fetch(`${base}${study}/issues/1.pdf`);
  expect(response.headers.get("content-type")).toContain("application/pdf");
  const page = await verify(new Uint8Array(await response.arrayBuffer()));
  expect(page).toContain("Issued here, unaltered.");
  expect(page).toContain(issuing.key.fingerprint());
  expect(page).toContain("to the byte the one that was issued");
  expect(list).toContain(`${study}/issues/1-board-part.pdf`);
  const board = await fetch(`${base}${study}/issues/1-board-part.pdf`);
  expect(board.headers.get("content-disposition")).toContain("-issue-1-board-part.pdf");
  const boardPage = await verify(new Uint8Array(await board.arrayBuffer()));
  expect(boardPage).toContain("Issued here, unaltered.");
  expect(boardPage).toContain("the board’s part of issue 1");
});

it("numbers reports that are issued at once one after the other", async () => {
  const before = issuing.issues.list(study.replace("/studies/", "")).length;
  await Promise.all([issue("a"), issue("b"), issue("c")]);
  const numbers = issuing.issues.list(study.replace("/studies/", "")).map(({ number }) => number);
  expect(numbers.slice(0, 3)).toEqual([before + 3, before + 2, before + 1]);
});

it("sets this year's request beside an issued report: what changed, and what it explains", async () => {
  const text = await get(`${study}/study`);
  const changed = text.replace(/^ {2}horizon: .*$/m, "  horizon: 20");
  expect(changed).not.toBe(text);
  const etag = (await fetch(`${base}/api${study}`)).headers.get("etag") ?? "";
  const saved = await fetch(`${base}/api${study}`, {
    method: "PUT",
    headers: { "If-Match": etag, "Content-Type": "text/plain" },
    body: changed,
  });
  expect(saved.status).toBe(200);
  const id = study.replace("/studies/", "");
  expect(await get(`${study}/issues`)).toContain(`${id}@issue-1&amp;right`);
  const page = await get(`/compare?left=${id}@issue-1&right=${id}`);
  expect(page).toMatch(/Issue \d beside Revision \d/);
  const compared = await get(`/compare.json?left=${id}@issue-1&right=${id}`);
  expect(compared).toContain("horizon");
  expect((await fetch(`${base}/compare?left=${id}@issue-99&right=${id}`)).status).toBe(404);
});

it("answers plainly to a file that is none, and to an issue that there is not", async () => {
  expect(await verify(Buffer.from("Dear board"))).toContain("cannot be read as a PDF");
  expect((await fetch(`${base}${study}/issues/99.pdf`)).status).toBe(404);
  expect((await fetch(`${base}${study}/issues/x.pdf`)).status).toBe(404);
});

it("issues no report on an example", async () => {
  const path = "/studies/example-ninemoss/issues";
  expect(await get(path)).toContain("Make a study from it");
  expect((await fetch(base + path, { method: "POST", body: new URLSearchParams() })).status).toBe(404);
});

it("says what is allowed of a file that is larger than any report", async () => {
  const page = await verify(Buffer.alloc(24 * 1024 * 1024 + 1));
  expect(page).toContain("at most 24 MB; no issued report is larger");
});

it("tells what to do where the key of the installation was spoilt, and issues nothing", async () => {
  const before = issuing.issues.list(study.replace("/studies/", "")).length;
  const kept = readFileSync(issuing.keyFile);
  writeFileSync(issuing.keyFile, "");
  const answer = await issue("unsigned");
  expect(answer.status).toBe(503);
  expect(await answer.text()).toContain("Put the file back from where you keep it");
  expect(issuing.issues.list(study.replace("/studies/", "")).length).toBe(before);
  writeFileSync(issuing.keyFile, kept);
  expect((await issue("signed")).status).toBe(303);
});
