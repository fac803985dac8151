import { setTimeout as pause } from "node:timers/promises";

/** One answer as a person saw it. */
export interface Seen {
  readonly who: "reader" | "editor" | "printer";
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

async function ask(crowd: Crowd, who: Seen["who"], path: string, init?: RequestInit): Promise<string> {
  const start = performance.now();
  try {
    const answer = await fetch(crowd.base + path, { redirect: "manual", ...init });
    const text = await answer.text();
    const isPolite = [429, 503].includes(answer.status) && answer.headers.has("Retry-After");
    crowd.seen({ who, status: answer.status, milliseconds: performance.now() - start, isPolite });
    return text;
  } catch {
    crowd.seen({ who, status: 0, milliseconds: performance.now() - start, isPolite: false });
    return "";
  }
}

const pages = ["", "/report", "/revisions", "/assumptions", "/edit/lake", "/edit/structures"];

/** Reads a page, looks at it for one to three seconds, and reads the next. */
export async function read(crowd: Crowd): Promise<void> {
  await pause(2000 * crowd.random());
  while (Date.now() < crowd.until) {
    const study = pick(["example-ninemoss", "example-sorrel-bend", ...crowd.studies], crowd.random);
    const isList = crowd.random() < 0.2;
    await ask(crowd, "reader", isList ? "/" : `/studies/${study}${pick(pages, crowd.random)}`);
    await pause(1000 + 2000 * crowd.random());
  }
}

/** Changes a field of his study every few seconds, and now and then sees what came out. */
export async function edit(crowd: Crowd, study: string): Promise<void> {
  for (let count = 1; Date.now() < crowd.until; count++) {
    const page = await ask(crowd, "editor", `/studies/${study}/edit/names`);
    const revision = /name="#base" value="(\d+)"/.exec(page)?.[1] ?? "1";
    const body = new URLSearchParams({
      "#base": revision,
      "#expected": revision,
      "#author": "Editor",
      "study/authority": `Authority ${count}`,
    });
    await ask(crowd, "editor", `/studies/${study}/edit/names`, { method: "POST", body });
    await pause(2000 + 2000 * crowd.random());
  }
}

/** Asks for one report after another; a refused one is asked for again after the time it names. */
export async function print(crowd: Crowd): Promise<void> {
  while (Date.now() < crowd.until) {
    const study = pick(["example-ninemoss", "example-sorrel-bend"], crowd.random);
    await ask(crowd, "printer", `/studies/${study}/report.pdf`);
    await pause(500);
  }
}

const pick = <Each>(all: readonly Each[], random: () => number): Each => {
  const found = all[Math.floor(random() * all.length)];
  if (found === undefined) throw new Error("nothing to pick from");
  return found;
};
