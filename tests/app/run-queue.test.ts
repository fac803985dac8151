import { describe, expect, it } from "vitest";
import { runQueue } from "../../src/app/run-queue.js";
import type { DrawControl } from "../../src/odds/ask-each.js";

const others = () => new Promise<void>((resolve) => setImmediate(resolve));

const settings = { patienceMilliseconds: 60_000, mostWaiting: 3 };

/** Runs of three rounds, each of which ends when it is told; notes what they do. */
function inRounds() {
  const queue = runQueue(settings);
  const done: string[] = [];
  const open = new Map<string, () => void>();
  const work =
    (name: string) =>
    async ({ signal, giveWay }: DrawControl) => {
      for (const round of ["first", "second", "third"]) {
        if (signal.aborted) return;
        await new Promise<void>((resolve) => open.set(name, resolve));
        done.push(`${name}, ${round}`);
        if (round !== "third") await giveWay?.();
      }
    };
  /** Ends the round that is under way, which must be that of one run alone. */
  const endRound = async () => {
    const [[name, end] = []] = open;
    if (!name || !end || open.size > 1) throw new Error(`under way: ${[...open.keys()].join(", ")}`);
    open.delete(name);
    end();
    await others();
  };
  return { queue, done, endRound, join: (name: string) => queue.join(name, work(name)) };
}

describe("runs that wait", () => {
  it("have their first round before anybody's second, and then end in their order", async () => {
    const { done, endRound, join } = inRounds();
    join("a");
    expect(join("b")).toEqual({ state: "waiting", before: 1 });
    await endRound();
    // The first has given way, and goes on after the third has had its first round.
    expect(join("c")).toEqual({ state: "waiting", before: 1 });
    for (let round = 0; round < 8; round += 1) await endRound();
    expect(done).toEqual([
      ...["a, first", "b, first", "c, first"],
      ...["a, second", "a, third", "b, second", "b, third", "c, second", "c, third"],
    ]);
  });

  it("have it, too, where they come while another is in its second", async () => {
    const { done, endRound, join } = inRounds();
    join("a");
    await endRound();
    join("b");
    for (let round = 0; round < 3; round += 1) await endRound();
    expect(done).toEqual(["a, first", "a, second", "b, first", "a, third"]);
  });

  it("go on where one that gave way is stopped by its reader, and where the one under way is", async () => {
    const { queue, done, endRound, join } = inRounds();
    join("a");
    join("b");
    await endRound();
    queue.cancel("a");
    await endRound();
    expect(join("b")).toHaveProperty("state", "drawing");
    await endRound();
    await endRound();
    expect(done).toEqual(["a, first", "b, first", "b, second", "b, third"]);
    join("c");
    expect(join("d")).toEqual({ state: "waiting", before: 1 });
    queue.cancel("c");
    expect(join("d")).toHaveProperty("state", "drawing");
  });
});
