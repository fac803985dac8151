/** Shows the balance of what is typed before it is saved, and its range once the typing rests. Without it the form is sent by its button. */

import { type Fault, followFaults } from "./listed-faults.js";

interface LiveAnswer {
  readonly balance: string;
  readonly range: string;
  readonly isUnderWay: boolean;
  /** Absent where a save tells what is wrong. */
  readonly faults?: readonly Fault[];
}

/** Milliseconds without a key before the range. */
const rest = 1500;

class LiveBalance {
  private asking = new AbortController();
  private waiting: number | undefined;
  private isAsking = false;
  private isOld = false;
  private readonly address: string;
  /** Whether the study rests on typical values, and has a range beside its balance. */
  private readonly isFirst: boolean;

  constructor(private readonly form: HTMLFormElement) {
    this.address = form.dataset.live ?? "";
    this.isFirst = form.dataset.first !== undefined;
    form.addEventListener("input", () => this.typed());
    if (form.method === "get") form.addEventListener("change", () => this.remember());
    // A save shows the balance itself: what was typed before it is old.
    form.addEventListener("saved", () => (this.isFirst ? this.later() : this.stop()));
    // Where the page lists what is wrong, it is not told a second time before something is typed.
    if (this.isFirst && form.dataset.listed === undefined) void this.ask(true);
  }

  private typed(): void {
    const range = document.getElementById("balance-range");
    if (range) range.textContent = "";
    this.isOld = true;
    if (!this.isAsking) void this.follow();
  }

  /** One question at a time, at once, and the next about what stands there by then: a slow server never falls behind. */
  private async follow(): Promise<void> {
    this.isAsking = true;
    while (this.isOld) {
      // A save meanwhile may have set the clock for a range.
      this.stop();
      this.isOld = false;
      await this.ask(false);
    }
    this.isAsking = false;
  }

  private stop(): void {
    this.asking.abort();
    clearTimeout(this.waiting);
  }

  /** Asks for the range once the typing rests. */
  private later(): void {
    this.stop();
    this.waiting = window.setTimeout(() => void this.ask(true), rest);
  }

  /** What a form of questions holds stands in the address, so that whoever leaves the page comes back to it. */
  private remember(): void {
    const said = this.fields().filter(([, value]) => value !== "");
    history.replaceState(history.state, "", `?${new URLSearchParams(said)}`);
  }

  private fields(): [string, string][] {
    return [...new FormData(this.form)].flatMap(([name, value]): [string, string][] =>
      typeof value === "string" ? [[name, value]] : [],
    );
  }

  private async ask(wantsRange: boolean): Promise<void> {
    if (wantsRange && this.form.method === "get") this.remember();
    this.asking = new AbortController();
    const { signal } = this.asking;
    try {
      const response = await this.send(wantsRange, signal);
      if (!response.ok) return;
      const answer: LiveAnswer = await response.json();
      if (signal.aborted) return;
      this.show(answer);
      if (!this.isOld && (answer.isUnderWay || (!wantsRange && this.isFirst))) this.later();
    } catch {
      // The balance stands as it is; the next key asks again.
    }
  }

  private send(wantsRange: boolean, signal: AbortSignal): Promise<Response> {
    const body = new URLSearchParams([...this.fields(), ...(wantsRange ? [["range", "1"]] : [])]);
    const headers = { Accept: "application/json" };
    if (this.form.method === "get") return fetch(`${this.address}?${body}`, { headers, signal });
    return fetch(this.address, { method: "POST", headers, body, signal });
  }

  private show({ balance, range, faults }: LiveAnswer): void {
    if (faults) followFaults(faults);
    const place = document.getElementById("balance");
    if (place) place.innerHTML = balance;
    const told = document.getElementById("balance-range");
    if (told && range !== "") told.textContent = range;
  }
}

for (const form of document.querySelectorAll<HTMLFormElement>("form[data-live]")) new LiveBalance(form);
