import { describe, expect, it } from "vitest";
import type { Answering, Asked } from "../../../src/app/answers/questions.js";
import { sharedAnswers } from "../../../src/app/answers/shared.js";
import { soon } from "../../../src/app/answers/soon.js";

const roomy = 1_000_000;
const unending = new AbortController().signal;
const results = (text: string): Asked<"results"> => ({ text, fileName: "lake.yaml", report: "/r" });

/** Notes what reaches the workers; answers when told to. */
function slow() {
  const asked: string[] = [];
  const left: string[] = [];
  const answer: (() => void)[] = [];
  const answering = {
    ask: (_kind: string, { text }: { readonly text: string }, signal?: AbortSignal) =>
      new Promise((resolve, reject) => {
        asked.push(text);
        answer.push(() => resolve(`page of ${text}`));
        signal?.addEventListener("abort", () => {
          left.push(text);
          reject(signal.reason);
        });
      }),
    close: async () => undefined,
  } as Answering;
  const answerAll = () => {
    for (const each of answer.splice(0)) each();
  };
  return { asked, left, answering, answerAll };
}

describe("a question that several readers ask", () => {
  it("is asked once, also after it was answered", async () => {
    const { asked, answering, answerAll } = slow();
    const shared = sharedAnswers(answering, roomy);
    const both = [shared.ask("results", results("one")), shared.ask("results", results("one"))];
    answerAll();
    expect(await Promise.all(both)).toEqual(["page of one", "page of one"]);
    expect(await shared.ask("results", results("one"))).toBe("page of one");
    expect(asked).toEqual(["one"]);
  });

  it("goes on when one of them leaves, and ends when all have left", async () => {
    const { left, answering, answerAll } = slow();
    const shared = sharedAnswers(answering, roomy);
    const readers = [new AbortController(), new AbortController()];
    const both = readers.map(({ signal }) => shared.ask("results", results("one"), signal));
    const outcomes = Promise.allSettled(both);
    readers[0]?.abort(new Error("gone"));
    expect(left).toEqual([]);
    readers[1]?.abort(new Error("gone too"));
    expect(left).toEqual(["one"]);
    expect((await outcomes).map(({ status }) => status)).toEqual(["rejected", "rejected"]);
    const again = shared.ask("results", results("one"));
    answerAll();
    expect(await again).toBe("page of one");
  });

  it("is asked again after it failed", async () => {
    let asked = 0;
    const failing = {
      ask: async () => Promise.reject(new Error(`fault ${++asked}`)),
    } as unknown as Answering;
    const shared = sharedAnswers(failing, roomy);
    await expect(shared.ask("results", results("one"))).rejects.toThrow("fault 1");
    await expect(shared.ask("results", results("one"))).rejects.toThrow("fault 2");
  });
});

describe("answers that are remembered", () => {
  /** Room for two pages of eleven letters, which count 23 bytes each. */
  function reading() {
    const { asked, answering, answerAll } = slow();
    const shared = sharedAnswers(answering, 50);
    const read = async (text: string) => {
      const found = shared.ask("results", results(text));
      answerAll();
      return found;
    };
    return { asked, read };
  }

  it("take no more room than there is: those asked for longest ago go first", async () => {
    const { asked, read } = reading();
    for (const text of ["one", "two", "one", "six", "one", "two"]) await read(text);
    expect(asked).toEqual(["one", "two", "six", "two"]);
  });

  it("stay where one came that is larger than all room", async () => {
    const { asked, read } = reading();
    const large = "three, which has more letters than there is room";
    for (const text of ["one", large, "one", large]) await read(text);
    expect(asked).toEqual(["one", large, large]);
  });
});

describe("a reader who does not wait", () => {
  it("is told that the answer is under way, and gets it when he comes back", async () => {
    const { asked, left, answering, answerAll } = slow();
    const shared = sharedAnswers(answering, roomy);
    const ask = () => soon(shared, ["results", results("one")], 5, unending);
    expect(await ask()).toBe("under way");
    answerAll();
    expect(await ask()).toEqual({ answer: "page of one" });
    expect([asked, left]).toEqual([["one"], []]);
  });
});
