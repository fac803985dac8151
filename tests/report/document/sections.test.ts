import { describe, expect, it } from "vitest";
import { fieldsOfPart, partOf } from "../../../src/editor/parts.js";
import { reportContext } from "../../../src/report/document/context.js";
import { renderReportBody } from "../../../src/report/document/html.js";
import type { ReportPart } from "../../../src/report/document/sections.js";
import { schematicView } from "../../../src/report/rack/schematic.js";
import { ownTextHtml } from "../../../src/report/words/own-text.js";
import { runStudy } from "../../../src/study/prepare/compute.js";
import { readStudyText } from "../../../src/study/reading/read.js";
import { editedText, inputErrorOf } from "../../study/example.js";
import { assumptions, exampleDocument, exampleRun } from "../runs.js";
import { sampleTold } from "../sample-odds.js";

const headings = (html: string) => [...html.matchAll(/<h2[^>]*>([^<]+)<\/h2>/g)].map((match) => match[1]);
const run = exampleRun("ninemoss");
const printedPart = partOf("printed");
if (!printedPart) throw new Error("no page of what is printed");
const bodyOf = (report: Partial<typeof run.document.report>, part: ReportPart = "all") =>
  renderReportBody(
    { ...run, document: { ...run.document, report: { ...run.document.report, ...report } } },
    undefined,
    { part },
  );

describe("the sections of a report", () => {
  it("leave the appendices to the full report where the board's part is asked for, and say so", () => {
    const html = bodyOf({}, "board");
    expect(headings(html).filter((text) => text?.startsWith("Appendix"))).toEqual([]);
    expect(html).toContain("Appendices that it names are in the full report");
    expect(headings(html)).toContain("Who pays");
  });

  it("are left out one by one where the author says so, page 1 never", () => {
    const html = bodyOf({ leaveOut: ["bearers", "checks", "worked"] });
    expect(headings(html)).not.toContain("Who pays");
    expect(headings(html)).not.toContain("Appendix E. Checks and sources");
    expect(headings(html)).toContain("Appendix D. Hydraulics, to be checked by hand");
    expect(headings(html)).toContain("What the board is asked");
    expect(html).toContain("The author has left out some appendices");
  });

  it("are not said to be left out where the method document has them", () => {
    const html = bodyOf({ leaveOut: ["relations", "worked", "drying"] });
    expect(html).toBe(bodyOf({}));
    expect(html).not.toContain("The author has left out some appendices");
  });

  it.each(["sorrel-bend", "ninemoss"] as const)("name no appendix that there is not: %s", (example) => {
    const html = renderReportBody(exampleRun(example), sampleTold(example));
    const letters = headings(html).flatMap((text = "") => /^Appendix ([A-Z])\./.exec(text)?.[1] ?? []);
    // What a source calls an appendix is its own.
    const own = html.slice(0, html.indexOf('<dl class="sources">'));
    const named = new Set([...own.matchAll(/\bappendix ([A-Z])\b/gi)].map(([, letter = ""]) => letter));
    expect(named.size).toBeGreaterThan(5);
    expect([...named].filter((letter) => !letters.includes(letter))).toEqual([]);
  });

  it("bear the titles by which a form offers them", () => {
    const printed = headings(renderReportBody(exampleRun("sorrel-bend"), sampleTold("sorrel-bend")));
    const offered = fieldsOfPart(printedPart).flatMap(({ field }) =>
      field.kind === "several" ? field.values.map((value) => field.titles[value] ?? "") : [],
    );
    expect(offered).toHaveLength(25);
    expect(offered.filter((title) => !printed.includes(title))).toEqual([]);
  });

  it("print the author's own words in their section", () => {
    const html = bodyOf({ texts: [{ section: "bearers", text: "Agreed with the *district*." }] });
    const section = html.slice(html.indexOf("Who pays</h2>"));
    expect(section).toMatch(/^Who pays<\/h2>\s*<div class="own-text"><p>Agreed with the <em>district<\/em>/);
  });
});

describe("the author's own words", () => {
  it("are refused beyond their length, with the place and what to do", () => {
    const texts = [{ section: "board", text: "word ".repeat(4000) }];
    const { message } = inputErrorOf(() => readStudyText(editedText([["report", { texts }]]), "study.yaml"));
    expect(message).toMatch(
      /report\.texts\[0\]\.text: found "word .*…; allowed: at most 4,000 characters\. Shorten it\./,
    );
  });

  // Rules of CommonMark (spec.commonmark.org) for emphasis, lists and escaping; what disturbs a page is switched off.
  it.each([
    ["**strong** and *soft*", "<p><strong>strong</strong> and <em>soft</em></p>"],
    ["- one\n- two", "<ul>\n<li>one</li>\n<li>two</li>\n</ul>"],
    ["<b onclick=x>bold</b>", "<p>&lt;b onclick=x&gt;bold&lt;/b&gt;</p>"],
    ["<script>alert(1)</script>", "<p>&lt;script&gt;alert(1)&lt;/script&gt;</p>"],
    [
      "|a|b|\n|-|-:|\n|c|1|",
      '<table>\n<thead>\n<tr>\n<th>a</th>\n<th class="num">b</th>\n</tr>\n</thead>\n<tbody>\n<tr>\n<td>c</td>\n<td class="num">1</td>\n</tr>\n</tbody>\n</table>',
    ],
    ["# not a heading", "<p># not a heading</p>"],
    ["![x](file:///etc/passwd)", "<p>![x](file:///etc/passwd)</p>"],
    ["[x](javascript:alert(1))", "<p>[x](javascript:alert(1))</p>"],
    ["Überlauf 🦪 \u202eabc", "<p>Überlauf 🦪 \u202eabc</p>"],
  ])("%s", (text, html) => {
    expect(ownTextHtml(text).trim()).toBe(html);
  });
});

describe("the schematic", () => {
  it("draws each structure at its elevation, higher ones higher", () => {
    const view = schematicView(reportContext(run));
    if (!view) throw new Error("no schematic");
    const tops = view.marks.map((mark) => mark.top);
    expect(tops).toEqual(tops.toSorted((one, other) => one - other));
    expect(view.band.y + view.band.height).toBeCloseTo(view.water.low, 9);
  });

  it("draws the most expensive of many structures and says how many there are", () => {
    const document = exampleDocument("ninemoss");
    const first = document.structures.find(({ kind }) => kind === "dock");
    if (!first) throw new Error("no dock");
    const many = Array.from({ length: 40 }, (_, index) => ({
      ...first,
      id: `copy-${index}`,
      name: `A structure whose name goes on and on, of the northern shore of the lake, number ${index}`,
    }));
    const view = schematicView(reportContext(runStudy({ ...document, structures: many }, assumptions)));
    const drawn = view?.marks.length ?? 0;
    expect(drawn).toBeGreaterThanOrEqual(8);
    expect(drawn).toBeLessThanOrEqual(14);
    expect(view?.note).toContain(`Drawn are the ${drawn} that cost most of 40`);
    expect(view?.marks.every(({ name }) => name.length <= 44)).toBe(true);
  });
});
