import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import type { Browser, Page } from "puppeteer";
import { extractText, getDocumentProxy } from "unpdf";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { readExamples } from "../../src/app/examples.js";
import { renderReportBody } from "../../src/report/document/html.js";
import { launchBrowser } from "../../src/report/print/browser.js";
import { printSettings } from "../../src/report/print/paper.js";
import { printPdf } from "../../src/report/print/pdf.js";
import { openPress } from "../../src/report/print/press-page.js";
import { runStudy } from "../../src/study/prepare/compute.js";
import { readStudyText } from "../../src/study/reading/read.js";
import { assumptions } from "./runs.js";

const asked: (string | undefined)[] = [];
const elsewhere = createServer((request, response) => {
  asked.push(request.url);
  response.end("document.title = 'run'");
});
let browser: Browser;
let press: Page;
let address = "";

beforeAll(async () => {
  await new Promise<void>((resolve) => elsewhere.listen(0, "127.0.0.1", resolve));
  address = `http://127.0.0.1:${(elsewhere.address() as AddressInfo).port}`;
  browser = await launchBrowser();
  press = await openPress(browser);
});

afterAll(async () => {
  await browser.close();
  elsewhere.close();
});

const textOf = async (pdf: Uint8Array) => {
  const { text } = await extractText(await getDocumentProxy(pdf), { mergePages: true });
  return text.replace(/\s+/g, " ");
};

describe("the printing browser", () => {
  it("loads nothing and runs nothing of what it prints, even if tags got into it", async () => {
    const body = `<h1>Printed</h1>
      <img src="${address}/image" onerror="document.title = 'run'"><svg onload="document.title = 'run'"></svg>
      <script>document.title = "run"</script><script src="${address}/script"></script>
      <link rel="stylesheet" href="${address}/style"><style>@import "${address}/import"; h1 { background: url(${address}/background) }</style>
      <iframe src="${address}/frame"></iframe><iframe src="file:///etc/passwd"></iframe><object data="file:///etc/passwd"></object>
      <iframe srcdoc="<script>parent.document.title = 'run'</script>"></iframe>
      <iframe src="data:text/html,<p>from a frame</p>"></iframe><embed src="${address}/embed">
      <video src="${address}/video" poster="${address}/poster"></video>
      <meta http-equiv="refresh" content="0; url=${address}/refresh">`;
    const pdf = await printPdf(press, body, { title: "Title", paper: "a4", edition: "Draft" });
    const text = await textOf(pdf);
    expect(text).toContain("Printed");
    expect(text).not.toMatch(/root:|from a frame/);
    expect(await press.title()).toBe("Title");
    expect(press.url()).toBe("about:blank");
    expect(asked).toEqual([]);
  });

  it("prints names of tags and addresses as they are typed", async () => {
    const name = `<img src=${address}/n onerror=document.title='run'>`;
    const example = readExamples().find(({ id }) => id === "example-ninemoss")?.text ?? "";
    const run = runStudy(
      readStudyText(example.replace(/^( *)name: .*$/m, `$1name: ${JSON.stringify(name)}`), "x"),
      assumptions,
    );
    const pdf = await printPdf(
      press,
      renderReportBody(run, undefined, { part: "board" }),
      printSettings(run.document),
    );
    const text = await textOf(pdf);
    expect(text.replaceAll(" ", "")).toContain(name.replaceAll(" ", ""));
    expect(asked).toEqual([]);
  });
});
