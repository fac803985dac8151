import { createHash } from "node:crypto";
import { describe, expect, it } from "vitest";
import { loadAssumptions } from "../../src/assumptions/load.js";
import { programVersion } from "../../src/assumptions/version.js";
import {
  methodDigest,
  methodPrintSettings,
  renderMethod,
  renderMethodBody,
} from "../../src/method/method-document.js";
import { methodView } from "../../src/method/method-view.js";
import { assumptionsFolder } from "../../src/report/document/assets.js";
import { renderReport, renderReportBody } from "../../src/report/document/html.js";
import { renderPage } from "../../src/report/document/render-page.js";
import { runStudy } from "../../src/study/prepare/compute.js";
import { assumptions, exampleDocument, exampleRun } from "../report/runs.js";

const body = renderMethodBody(assumptions);
const headings = (html: string) => [...html.matchAll(/<h2[^>]*>([^<]+)<\/h2>/g)].map((match) => match[1]);
const parts = [
  "What is computed, in words",
  "Relations",
  "How answers are worded",
  "How the odds are simulated",
  "Ways of keeping a part in service",
  "Drying and frost against published results",
  "Habitat against lakes known to be infested",
  "Worked by hand: Sorrel Bend Reservoir",
  "From what is entered to a cost line",
  "Assumptions",
  "Sources",
];
const contents = (html: string) =>
  [...html.matchAll(/<p><a href="#([^"]+)">([^<]+)<\/a> <span data-page-of="\1">/g)].map(
    ([, , title]) => title,
  );
const keysIn = (text: string) =>
  new Set([...text.matchAll(/\[([a-z]+-?[a-z0-9-]*)\]/g)].map(([, key]) => key));
const idsIn = (html: string) => [...html.matchAll(/ id="([^"]+)"/g)].map(([, id]) => id);

// What is expected is what the document is for: it follows from no source.
describe("the method document", () => {
  it("has its parts, its version and its digest, and says that its lake is invented", () => {
    expect(headings(body)).toEqual(["Contents", ...parts]);
    expect(body).toContain(`Method of version ${programVersion()}`);
    expect(body).toContain(methodDigest(assumptions));
    expect(body).toContain("Sorrel Bend Reservoir is an invented lake");
    expect(body.match(/<div class="example">/g)).toHaveLength(2 + 12);
  });

  it("lists its parts, and the subjects of its relations, by links that lead to them", () => {
    expect(contents(body)).toEqual(parts);
    const links = [...body.matchAll(/ href="#([^"]+)"/g)].map(([, id]) => id);
    expect(links).toContain("relations-2");
    const ids = idsIn(body);
    expect(links.filter((id) => !ids.includes(id))).toEqual([]);
  });

  it("has the same digest whenever and of whatever copy it is made, and another with another assumption", () => {
    const digest = methodDigest(assumptions);
    expect(digest).toMatch(/^[0-9a-f]{64}$/);
    expect(methodDigest(loadAssumptions(assumptionsFolder))).toBe(digest);
    const entries = new Map(assumptions.entries);
    const viscosity = entries.get("hydraulics.viscosity");
    if (!viscosity) throw new Error("no viscosity");
    entries.set(viscosity.id, { ...viscosity, value: 1.1e-6 });
    expect(methodDigest({ ...assumptions, entries })).not.toBe(digest);
  });

  it("has a digest of all but the paths of its lakes, which no issue waits for", () => {
    const alone = renderPage("partials/method-content", { ...methodView(assumptions), paths: [] });
    expect(createHash("sha256").update(alone).digest("hex")).toBe(methodDigest(assumptions));
    expect(alone).not.toContain("Copperhithe");
    expect(body).toContain("Copperhithe");
  });

  it("is a page of its own, and letter paper", () => {
    const page = renderMethod(assumptions, { inline: false }, { back: "/", pdf: "/method.pdf" });
    expect(page).toContain('<a href="/method.pdf">');
    expect(headings(page)).toEqual(["Contents", ...parts]);
    expect(methodPrintSettings()).toMatchObject({ paper: "letter", edition: `version ${programVersion()}` });
  });

  it("lists every source and every assumption that it names", () => {
    const [before = "", sources = ""] = body.split('<h2 id="sources">');
    const listed = keysIn(sources);
    const named = keysIn(before);
    expect(named.size).toBeGreaterThan(20);
    expect([...named].filter((key) => !listed.has(key))).toEqual([]);
    const [sheets = "", coefficients = ""] = before.split('<h2 id="assumptions">');
    const origins = [...sheets.matchAll(/<td>([a-z](?:[a-z0-9-]*\.)+[a-z0-9-]+)<\/td>/g)].map(
      ([, id]) => id ?? "",
    );
    expect(origins.length).toBeGreaterThan(10);
    const written = coefficients.replaceAll("\u200b", "");
    expect(origins.filter((id) => !written.includes(`<td>${id}</td>`))).toEqual([]);
  });
});

describe("the method document with a study", () => {
  it("has the study's own sheets after what is the same for all, under the same digest", () => {
    const own = renderMethodBody(assumptions, exampleRun("ninemoss"));
    const { name } = exampleDocument("ninemoss").study;
    expect(headings(own)).toEqual(["Contents", ...parts, `Sheets of ${name}`]);
    expect(contents(own)).toEqual([...parts, `Sheets of ${name}`]);
    expect(own).toContain(methodDigest(assumptions));
    // Two of the program's own example and the others of its method; of this study one, and the growth that it starts from.
    expect(own.match(/<div class="example">/g)).toHaveLength(4 + 12);
    expect(methodPrintSettings(exampleRun("ninemoss"))).toMatchObject({ paper: "a4" });
  });

  it("has drying by the study's own values where it has such, and no id twice", () => {
    const document = exampleDocument("ninemoss");
    const override = { id: "drying.reference-hours", value: "130 h", reason: "own trial" };
    const run = runStudy({ ...document, overrides: [...document.overrides, override] }, assumptions);
    const own = renderMethodBody(assumptions, run);
    expect(headings(own)).toContain(`Drying and frost by the values of ${document.study.name}`);
    const ids = idsIn(own);
    expect(ids).toContain("table-drying-fit");
    expect(ids).toContain("own-table-drying-fit");
    expect(ids.filter((id, index) => ids.indexOf(id) !== index)).toEqual([]);
  });
});

describe("a report", () => {
  const html = renderReport(exampleRun("ninemoss"), { inline: false });

  it("has none of it, and names its version and where to get it", () => {
    expect(html).not.toMatch(/class="(?:relation|formula|example)"|chart-drying/);
    expect(html).toContain(`method of version ${programVersion()}, available from`);
  });

  it.each(["all", "board"] as const)("names it also where how it is computed is left out: %s", (part) => {
    const run = exampleRun("ninemoss");
    const report = { ask: {}, leaveOut: ["method" as const], texts: [] };
    const left = renderReportBody({ ...run, document: { ...run.document, report } }, undefined, { part });
    expect(headings(left)).not.toContain("How it is computed");
    expect(left).toContain(`method of version ${programVersion()}, available from`);
  });
});
