/** Shows the balance of what is typed before it is saved, and its range once the typing rests. Without it the form is sent by its button. */

interface LiveAnswer {
  readonly balance: string;
  readonly range: string;
  readonly isUnderWay: boolean;
}

/** Milliseconds without a key: before the balance, and before its range. */
const pause = 40;
const rest = 1500;

class LiveBalance {
  private asking = new AbortController();
  private waiting: number | undefined;
  private readonly address: string;

  constructor(private readonly form: HTMLFormElement) {
    this.address = form.dataset.live ?? "";
    form.addEventListener("input", () => this.typed());
    if (form.method === "get") form.addEventListener("change", () => this.remember());
    // A save shows the balance itself: what was typed before it is old.
    form.addEventListener("saved", () => this.later(true, rest));
    if (form.dataset.first !== undefined) this.later(true, pause);
  }

  private typed(): void {
    const range = document.getElementById("balance-range");
    if (range) range.textContent = "";
    this.later(false, pause);
  }

  private later(wantsRange: boolean, milliseconds: number): void {
    this.asking.abort();
    clearTimeout(this.waiting);
    this.waiting = window.setTimeout(() => void this.ask(wantsRange), milliseconds);
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
      if (answer.isUnderWay) this.later(true, rest);
      else if (!wantsRange && this.form.dataset.first !== undefined) this.later(true, rest);
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

  private show({ balance, range }: LiveAnswer): void {
    const place = document.getElementById("balance");
    if (place) place.innerHTML = balance;
    const told = document.getElementById("balance-range");
    if (told && range !== "") told.textContent = range;
  }
}

for (const form of document.querySelectorAll<HTMLFormElement>("form[data-live]")) new LiveBalance(form);

export {};
