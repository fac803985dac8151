import { describe, expect, it } from "vitest";
import { databaseFile } from "../../src/store/connection.js";
import type { KeptIssue } from "../../src/store/issues.js";
import { flipBitIn } from "../store/harming.js";
import { folder } from "../store/places.js";
import { smallLakeText } from "../study/small-lake.js";
import { serving } from "./serving.js";

const writer = { author: "Ada", note: "", origin: "api" } as const;

const issue: KeptIssue = {
  ...{ studyId: "lake", number: 1, issuedAt: "2026-01-02T00:00:00Z", author: "Ada", note: "" },
  ...{ revision: 1, studyName: "Lake", engineVersion: "0.1.0", seed: null, digest: "digest 1" },
  ...{ fileName: "lake.yaml", studyText: "study: {}", assumptions: '{"used":[],"files":{}}', figures: "{}" },
  pdf: Buffer.from("%PDF-1.7 pages"),
  boardPdf: Buffer.from("%PDF-1.7, the board"),
};

/** A lake of two complete revisions, a pond and an issued report, served after one bit of a text was flipped. */
async function harmed(text: string) {
  const place = folder();
  const served = await serving(place);
  const { studies, connection, parts } = served;
  studies.create(smallLakeText.replace(/^( *)name: .*$/m, "$1name: Lake"), writer);
  const lake = studies.find("lake")?.text ?? "";
  studies.save("lake", 1, `${lake}# the second revision\n`, writer);
  studies.create("study: { name: Pond } # of the pond\n", writer);
  parts.issuing.issues.keep(issue);
  connection.close();
  flipBitIn(databaseFile(place), text);
  return served;
}

describe("a study whose latest revision is damaged", () => {
  it.each([
    "/studies/lake",
    "/studies/lake/report",
    "/studies/lake/report.pdf",
    "/studies/lake/results.json",
    "/studies/lake/study",
    "/studies/lake/edit/names",
    "/studies/lake/assumptions",
    "/studies/lake/odds",
    "/studies/lake/forms",
    "/studies/lake/revisions",
    "/studies/lake/revisions/2",
    "/studies/lake/revisions/2/study",
    "/studies/lake/issues",
    "/compare?left=lake&right=example-ninemoss",
    "/compare.json?left=example-ninemoss&right=lake@2",
    "/api/studies/lake",
    "/api/studies/lake/text",
    "/api/studies/lake/revisions/2",
    "/api/studies/lake/results",
  ])("is told at %s, and never computed or given out", async (path) => {
    const { ask } = await harmed("the second revision");
    const response = await ask(path);
    expect(response.status).toBe(409);
    const text = await response.text();
    expect(text).toContain("Revision 2 of “Lake” is damaged");
    expect(text).toContain("Revision 1 before it is sound");
    expect(text).not.toContain("the second revisio");
  });

  it("leaves the list, and every other study, in order, and is told in it", async () => {
    const { ask } = await harmed("the second revision");
    const list = await ask("/");
    expect(list.status).toBe(200);
    const page = await list.text();
    expect(page).toContain("revision 2, damaged");
    expect(page).toContain("Revision 2 is damaged. Open the study to go on from an earlier one.");
    for (const path of ["/studies/pond", "/studies/new", "/compare", "/compare?left=pond", "/api/studies"]) {
      expect((await ask(path)).status, path).toBe(200);
    }
    const cards = await (await ask("/api/studies")).json();
    expect(cards).toEqual(
      expect.arrayContaining([
        expect.objectContaining({ id: "lake", isDamaged: true }),
        expect.objectContaining({ id: "pond", isDamaged: false }),
      ]),
    );
  });

  it("goes on from the sound revision by the button of the page that tells it", async () => {
    const { ask, studies } = await harmed("the second revision");
    const page = await (await ask("/studies/lake")).text();
    expect(page).toContain('action="/studies/lake/revisions/1/restore"');
    expect((await ask("/studies/lake/revisions/1")).status).toBe(200);
    expect(await (await ask("/studies/lake/revisions/1/study")).text()).toContain("name: Lake");
    const expected = /name="expected" value="(\d+)"/.exec(page)?.[1] ?? "";
    const body = new URLSearchParams({ expected });
    const restored = await ask("/studies/lake/revisions/1/restore", { method: "POST", body });
    expect(restored.headers.get("location")).toBe("/studies/lake");
    expect(studies.find("lake")).toMatchObject({ revision: 3, isDamaged: false });
    const revisions = await (await ask("/studies/lake/revisions")).text();
    expect(revisions).toContain('Damaged<span class="unseen">: revision 2</span>');
  });

  it("goes on from the sound revision by a program", async () => {
    const { ask } = await harmed("the second revision");
    const cards = await (await ask("/api/studies/lake/revisions")).json();
    expect(cards).toMatchObject([
      { revision: 2, isDamaged: true },
      { revision: 1, isDamaged: false },
    ]);
    const restore = (match: string) =>
      ask("/api/studies/lake/revisions/1/restore", { method: "POST", headers: { "If-Match": match } });
    expect((await restore('"2-0000.active"')).status).toBe(409);
    expect(await (await restore("*")).json()).toMatchObject({ revision: 3, isDamaged: false });
  });

  it("can be copied from its sound revision, put away and deleted", async () => {
    const { ask, studies } = await harmed("the second revision");
    const copy = await ask("/api/studies/lake/copy?revision=1", { method: "POST" });
    expect(copy.status).toBe(201);
    expect((await ask("/studies/lake/copy", { method: "POST" })).status).toBe(409);
    expect((await ask("/studies/lake/archive", { method: "POST" })).status).toBe(303);
    expect((await ask("/api/studies/lake", { method: "DELETE" })).status).toBe(200);
    expect(await (await ask("/")).text()).toContain("revision 2, damaged");
    expect(studies.inState("deleted").map(({ id }) => id)).toEqual(["lake"]);
  });
});

describe("a form sent to a study that was damaged meanwhile", () => {
  it("is refused with the way out, and changes nothing", async () => {
    const { ask, studies } = await harmed("the second revision");
    const body = new URLSearchParams({ "#base": "2", "#expected": "2", "study/name": "Mine" });
    const response = await ask("/studies/lake/edit/names", { method: "POST", body });
    expect(response.status).toBe(409);
    expect(await response.text()).toContain("Revision 1 before it is sound");
    expect(studies.card("lake")?.revision).toBe(2);
  });
});

describe("an issued report that is damaged", () => {
  it.each(["%PDF-1.7 pages", '{"used":[],"files":{}}'])(
    "in %s is told where its file is asked for",
    async (text) => {
      const { ask } = await harmed(text);
      const response = await ask("/studies/lake/issues/1.pdf");
      expect(response.status).toBe(409);
      expect(response.headers.get("content-type")).toContain("text/html");
      expect(await response.text()).toContain("Issued report 1 on “Lake” is damaged as it is kept here");
      expect((await ask("/compare?left=lake@issue-1&right=lake")).status).toBe(409);
      expect(await (await ask("/compare?left=lake")).text()).toContain("issued report 1 (damaged)");
      expect((await ask("/studies/lake/issues")).status).toBe(200);
      expect((await ask("/studies/lake")).status).toBe(200);
    },
  );
});
