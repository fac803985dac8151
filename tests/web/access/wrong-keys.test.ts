import { describe, expect, it } from "vitest";
import { networkOf } from "../../../src/web/access/network.js";
import { longest, mostWaiting, slowing } from "../../../src/web/access/slowing.js";
import { locked } from "./locked.js";

/** Waits that last until they are let go, as long as they were asked for. */
function held() {
  const asked: number[] = [];
  const ends: (() => void)[] = [];
  const wait = (milliseconds: number) => {
    asked.push(milliseconds);
    return new Promise<void>((resolve) => ends.push(resolve));
  };
  const letGo = () => {
    for (const end of ends.splice(0)) end();
  };
  return { asked, wait, letGo };
}

/** Waits that are noted and pass at once. */
function noted() {
  const asked: number[] = [];
  return { asked, wait: async (milliseconds: number) => void asked.push(milliseconds) };
}

const changed = (key: string) => `${key.slice(0, -1)}${key.endsWith("a") ? "b" : "a"}`;
const bearer = (key: string) => ({ headers: { Authorization: `Bearer ${key}` } });

describe("a wrong key", () => {
  it("is refused in the same words as an unknown name", async () => {
    const { signIn } = await locked();
    const words = async (name: string) => {
      const response = await signIn(name, "wrong");
      expect(response.status).toBe(401);
      return (await response.text()).replaceAll(name, "NAME");
    };
    expect(await words("Ada")).toBe(await words("Zoe"));
  });

  it.each(["Ada", "Zoe"])("of %s is answered later each time, up to a bound", async (name) => {
    const { asked, wait } = noted();
    const { signIn, keys } = await locked({}, wait);
    const wrong = name === "Ada" ? changed(keys.ada) : "wrong";
    for (let time = 0; time < 8; time += 1) expect((await signIn(name, wrong)).status).toBe(401);
    // By hand: a quarter of a second, doubled each time, no more than eight seconds.
    expect(asked).toEqual([250, 500, 1000, 2000, 4000, 8000, 8000, 8000]);
    expect(Math.max(...asked)).toBe(longest);
  });

  it("slows its address too, whatever names it is tried with", async () => {
    const { asked, wait } = noted();
    const { signIn } = await locked({}, wait);
    for (let time = 0; time < 31; time += 1) await signIn(`Name ${time}`, "wrong");
    // By hand: each ten failures of an address double the delay.
    expect([asked[0], asked[9], asked[10], asked[20], asked[30]]).toEqual([250, 250, 500, 1000, 2000]);
  });

  it("does not count for a name once the right one was given", async () => {
    const { asked, wait } = noted();
    const { signIn, keys } = await locked({}, wait);
    for (let time = 0; time < 3; time += 1) await signIn("Ada", "wrong");
    await signIn("ada", keys.ada);
    await signIn("Ada", "wrong");
    expect(asked).toEqual([250, 500, 1000, 250]);
  });
});

describe("a right key", () => {
  it("is let in after a hundred wrong ones from its address, of its name and of others", async () => {
    const { signIn, keys, ask } = await locked();
    for (let time = 0; time < 50; time += 1) {
      await signIn("Ada", "wrong");
      await ask("/api/studies", bearer(`${time}`.padStart(5, "x")));
    }
    expect((await signIn("Ada", keys.ada)).status).toBe(303);
    expect((await signIn("Ben", keys.ben)).status).toBe(303);
    expect((await ask("/api/studies", bearer(keys.ada))).status).toBe(200);
    expect((await ask("/api/studies", bearer(changed(keys.ada)))).status).toBe(401);
    expect((await ask("/api/studies", bearer(keys.ben))).status).toBe(200);
  });

  it("is let in at once while as many wrong ones wait as may, and more are refused at once", async () => {
    const { asked, wait, letGo } = held();
    const { signIn, keys, ask } = await locked({}, wait);
    const tries = Array.from({ length: mostWaiting.ofName + 2 }, () => signIn("Ada", changed(keys.ada)));
    const first = await Promise.race(tries);
    expect(first.status).toBe(429);
    expect(Number(first.headers.get("retry-after"))).toBeLessThanOrEqual(longest / 1000);
    expect((await signIn("Ada", keys.ada)).status).toBe(303);
    expect((await ask("/api/studies", bearer(keys.ada))).status).toBe(200);
    letGo();
    const statuses = (await Promise.all(tries)).map(({ status }) => status).sort();
    expect(statuses).toEqual([401, 401, 401, 429, 429]);
    expect(asked).toHaveLength(mostWaiting.ofName);
  });
});

describe("wrong keys that wait", () => {
  it("keep their place although the asker left, so that leaving and asking anew gains nothing", async () => {
    const { asked, wait, letGo } = held();
    const { base, signIn, keys } = await locked({}, wait);
    for (let time = 1; time <= mostWaiting.ofName; time += 1) {
      const leaving = new AbortController();
      const body = new URLSearchParams({ name: "Ada", key: changed(keys.ada) });
      const left = fetch(`${base}/sign-in`, { method: "POST", body, signal: leaving.signal });
      await expect.poll(() => asked.length).toBe(time);
      leaving.abort();
      await expect(left).rejects.toThrow();
    }
    expect((await signIn("Ada", changed(keys.ada))).status).toBe(429);
    letGo();
  });

  it("are no more from one address, or in all, than connections can be spared for", async () => {
    const { asked, wait, letGo } = held();
    const slow = slowing(wait);
    const crowd = (count: number, address: (index: number) => string) =>
      Promise.allSettled(
        Array.from({ length: count }, (_each, index) => slow.hold(`${index}`, address(index))),
      );
    const one = crowd(500, () => "192.0.2.1");
    await expect.poll(() => asked.length).toBe(mostWaiting.ofAddress);
    const all = crowd(2000, (index) => `198.51.${index % 100}.${Math.floor(index / 100)}`);
    await expect.poll(() => asked.length).toBe(mostWaiting.inAll);
    letGo();
    const refused = [...(await one), ...(await all)].filter(({ status }) => status === "rejected");
    expect(refused).toHaveLength(2500 - mostWaiting.inAll);
  });
});

describe("what counts as one asker", () => {
  it.each([
    ["192.0.2.1", "192.0.2.1"],
    ["::ffff:192.0.2.1", "192.0.2.1"],
    ["2001:db8:0:1:a:b:c:d", "2001:db8:0:1"],
    ["2001:DB8::1:2:3:4:5", "2001:db8:0:1"],
    ["2001:0db8::1", "2001:db8:0:0"],
    ["::1", "0:0:0:0"],
    ["", ""],
  ])("%s is of %s", (address, network) => {
    expect(networkOf(address)).toBe(network);
  });
});
