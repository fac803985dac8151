import { describe, expect, it } from "vitest";
import { answerInTime } from "../../../src/app/answers/answer-in-time.js";
import type { AnsweringInTurn, Asked } from "../../../src/app/answers/questions.js";
import { sharedAnswers } from "../../../src/app/answers/shared.js";

const roomy = 1_000_000;
const unending = new AbortController().signal;
const resultsOf = (text: string): Asked<"results"> => ({ text, fileName: "lake.yaml", report: "/r" });

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
  } as AnsweringInTurn;
  const answerAll = () => {
    for (const each of answer.splice(0)) each();
  };
  return { asked, left, answering, answerAll };
}

describe("a question that several readers ask", () => {
  it("is asked once, also after it was answered", async () => {
    const { asked, answering, answerAll } = slow();
    const shared = sharedAnswers(answering, roomy);
    const both = [shared.ask("results", resultsOf("one")), shared.ask("results", resultsOf("one"))];
    answerAll();
    expect(await Promise.all(both)).toEqual(["page of one", "page of one"]);
    expect(await shared.ask("results", resultsOf("one"))).toBe("page of one");
    expect(asked).toEqual(["one"]);
  });

  it("goes on when one of them leaves, and ends when all have left", async () => {
    const { left, answering, answerAll } = slow();
    const shared = sharedAnswers(answering, roomy);
    const readers = [new AbortController(), new AbortController()];
    const both = readers.map(({ signal }) => shared.ask("results", resultsOf("one"), signal));
    const outcomes = Promise.allSettled(both);
    readers[0]?.abort(new Error("gone"));
    expect(left).toEqual([]);
    readers[1]?.abort(new Error("gone too"));
    expect(left).toEqual(["one"]);
    expect((await outcomes).map(({ status }) => status)).toEqual(["rejected", "rejected"]);
    const again = shared.ask("results", resultsOf("one"));
    answerAll();
    expect(await again).toBe("page of one");
  });

  it("is known once it is answered, and not before", async () => {
    const { answering, answerAll } = slow();
    const shared = sharedAnswers(answering, roomy);
    expect([shared.hasBegun(), shared.known("results", resultsOf("one"))]).toEqual([false, undefined]);
    const asked = shared.ask("results", resultsOf("one"));
    expect([shared.hasBegun(), shared.known("results", resultsOf("one"))]).toEqual([true, undefined]);
    answerAll();
    await asked;
    expect(shared.known("results", resultsOf("one"))).toBe("page of one");
    expect(shared.known("results", resultsOf("two"))).toBeUndefined();
  });

  it("is asked again after it failed", async () => {
    let asked = 0;
    const failing = {
      ask: async () => Promise.reject(new Error(`fault ${++asked}`)),
    } as unknown as AnsweringInTurn;
    const shared = sharedAnswers(failing, roomy);
    await expect(shared.ask("results", resultsOf("one"))).rejects.toThrow("fault 1");
    await expect(shared.ask("results", resultsOf("one"))).rejects.toThrow("fault 2");
  });
});

describe("a study that is edited while a question about it waits", () => {
  /** The workers take the questions in order, each when told to. */
  function queued() {
    const turns: (() => void)[] = [];
    const worked: string[] = [];
    const answering = {
      ask: (_kind: string, _asked: object, signal?: AbortSignal, turn?: { asked: () => { text: string } }) =>
        new Promise((resolve, reject) => {
          const leave = () => reject(signal?.reason);
          signal?.addEventListener("abort", leave);
          turns.push(() => {
            signal?.removeEventListener("abort", leave);
            const text = turn?.asked().text ?? "";
            worked.push(text);
            turns.push(() => resolve(`page of ${text}`));
          });
        }),
      close: async () => undefined,
    } as unknown as AnsweringInTurn;
    return { answering, worked, next: () => turns.shift()?.() };
  }

  function edited() {
    const { answering, worked, next } = queued();
    const shared = sharedAnswers(answering, roomy);
    let text = "one";
    const latest = {
      study: "lake",
      find: () => ({ text, fileName: "lake.yaml" }),
      askedOf: (entry: { readonly text: string }) => resultsOf(entry.text),
    };
    const read = async () => {
      const { entry, answer } = await shared.askLatest("results", latest);
      return `${entry.text}: ${answer}`;
    };
    const save = (saved: string) => {
      text = saved;
    };
    return { shared, worked, next, read, save };
  }

  it("is worked out once, as it is when its turn comes, and whoever asked gets that with the study it is of", async () => {
    const { worked, next, read, save } = edited();
    const first = read();
    save("two");
    const second = read();
    save("three");
    const third = read();
    next();
    next();
    expect(await Promise.all([first, second, third])).toEqual(Array(3).fill("three: page of three"));
    expect(worked).toEqual(["three"]);
    expect(await read()).toBe("three: page of three");
  });

  it("is worked out again for those who ask after its turn", async () => {
    const { worked, next, read, save } = edited();
    const first = read();
    next();
    const same = read();
    save("two");
    const second = read();
    next();
    next();
    next();
    expect(await Promise.all([first, same, second])).toEqual([
      "one: page of one",
      "one: page of one",
      "two: page of two",
    ]);
    expect(worked).toEqual(["one", "two"]);
  });

  it("is told apart from other questions about the same study", async () => {
    const { shared, next, read } = edited();
    const page = read();
    const figures = shared.askLatest("figures", {
      study: "lake",
      find: () => ({ text: "one", fileName: "lake.yaml" }),
      askedOf: (entry) => ({ ...entry, odds: undefined }),
    });
    for (const _ of [1, 2, 3, 4]) next();
    expect(await page).toBe("one: page of one");
    expect((await figures).answer).toBe("page of one");
  });
});

describe("answers that are remembered", () => {
  /** Room for two pages of eleven letters, which count 23 bytes each. */
  function reading() {
    const { asked, answering, answerAll } = slow();
    const shared = sharedAnswers(answering, 50);
    const read = async (text: string) => {
      const found = shared.ask("results", resultsOf(text));
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
    const results = (signal: AbortSignal) => shared.ask("results", resultsOf("one"), signal);
    const ask = () => answerInTime(results, 5, unending);
    expect(await ask()).toBe("under way");
    answerAll();
    expect(await ask()).toEqual({ answer: "page of one" });
    expect([asked, left]).toEqual([["one"], []]);
  });
});
