import { setTimeout as pause } from "node:timers/promises";

/** One answer as a person saw it. */
export interface Seen {
  /** Readers see an answer; those who are told that a page is being worked out see it whole later, counted from the start. */
  readonly who: "reader" | "reader of a page worked out" | "reader of results.json" | "editor" | "printer";
  /** Its address without the study: "/studies/ID/report". */
  readonly page: string;
  /** 0 where no answer came. */
  readonly status: number;
  readonly milliseconds: number;
  /** A refusal that says when to ask again. */
  readonly isPolite: boolean;
}

export interface Crowd {
  readonly base: string;
  /** Studies of the editors, each of his own. */
  readonly studies: readonly string[];
  readonly until: number;
  readonly random: () => number;
  readonly seen: (each: Seen) => void;
}

interface Asking {
  readonly who: Seen["who"];
  readonly path: string;
  readonly init?: RequestInit;
  /** When the person began to wait. */
  readonly start?: number;
}

async function ask(crowd: Crowd, { who, path, init, start = performance.now() }: Asking): Promise<string> {
  const page = path.replace(/^\/studies\/[^/]+/, "/studies/ID");
  try {
    const answer = await fetch(crowd.base + path, { redirect: "manual", ...init });
    const text = await answer.text();
    const isPolite = [429, 503].includes(answer.status) && answer.headers.has("Retry-After");
    crowd.seen({ who, page, status: answer.status, milliseconds: performance.now() - start, isPolite });
    return text;
  } catch {
    crowd.seen({ who, page, status: 0, milliseconds: performance.now() - start, isPolite: false });
    return "";
  }
}

const pages = ["", "/report", "/revisions", "/assumptions", "/edit/lake", "/edit/structures"];

/** Reads a page, or the figures of a study that is being edited, looks at it for one to three seconds, and reads the next. */
export async function read(crowd: Crowd): Promise<void> {
  await pause(2000 * crowd.random());
  while (Date.now() < crowd.until) {
    const chance = crowd.random();
    if (chance < 0.2) await readWhole(crowd, "/");
    else if (chance < 0.35) await readFigures(crowd);
    else
      await readWhole(crowd, `/studies/${pick(everyStudy(crowd), crowd.random)}${pick(pages, crowd.random)}`);
    await pause(1000 + 2000 * crowd.random());
  }
}

const everyStudy = ({ studies }: Crowd) => ["example-ninemoss", "example-sorrel-bend", ...studies];

async function readFigures(crowd: Crowd): Promise<void> {
  const study = pick(crowd.studies, crowd.random);
  await ask(crowd, { who: "reader of results.json", path: `/studies/${study}/results.json` });
}

/** Reads a page as a browser does: one that is being worked out is shown again once its figures are there. */
async function readWhole(crowd: Crowd, path: string): Promise<void> {
  const start = performance.now();
  const page = await ask(crowd, { who: "reader", path, start });
  const ready = /<h1>Being worked out<[\s\S]*data-awaits="([^"]+)"/
    .exec(page)?.[1]
    ?.replaceAll("&#x3D;", "=");
  if (ready === undefined) return;
  await (await fetch(crowd.base + ready).catch(() => undefined))?.text();
  await ask(crowd, { who: "reader of a page worked out", path, start });
}

/** Changes a field of his study every one to two seconds. */
export async function edit(crowd: Crowd, study: string): Promise<void> {
  for (let count = 1; Date.now() < crowd.until; count++) {
    const page = await ask(crowd, { who: "editor", path: `/studies/${study}/edit/names` });
    const revision = /name="#base" value="(\d+)"/.exec(page)?.[1] ?? "1";
    const body = new URLSearchParams({
      "#base": revision,
      "#expected": revision,
      "#author": "Editor",
      "study/authority": `Authority ${count}`,
    });
    await ask(crowd, { who: "editor", path: `/studies/${study}/edit/names`, init: { method: "POST", body } });
    await pause(1000 + 1000 * crowd.random());
  }
}

/** Asks for one report after another; a refused one is asked for again after the time it names. */
export async function print(crowd: Crowd): Promise<void> {
  while (Date.now() < crowd.until) {
    const study = pick(everyStudy(crowd), crowd.random);
    await ask(crowd, { who: "printer", path: `/studies/${study}/report.pdf` });
    await pause(500);
  }
}

const pick = <Each>(all: readonly Each[], random: () => number): Each => {
  const found = all[Math.floor(random() * all.length)];
  if (found === undefined) throw new Error("nothing to pick from");
  return found;
};
