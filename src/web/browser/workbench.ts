/** Saves a page of forms as one works. Without it the same form is sent by its button, to the same address. */

import { drafts, type Kept } from "./drafts.js";
import { element, inputNamed, isInput, pairs, post, put, putValue, sentOf } from "./page-inputs.js";
import { type SavedAnswer, showError, showTitle } from "./saved-answer.js";

const firstWait = 2000;
const longestWait = 30_000;

function say(text: string): void {
  const place = element("save-state");
  if (place) place.textContent = text;
}

class PageForm {
  private readonly key: string;
  private kept: Kept;
  private saving: Promise<boolean> | undefined;
  private again = false;
  private wait = firstWait;
  private inConflict = false;

  constructor(private readonly form: HTMLFormElement) {
    this.key = `ramp-and-rack:${form.dataset.part ?? ""}`;
    this.kept = { base: this.hidden("#base").value, values: {} };
    form.addEventListener("input", ({ target }) => this.remember(target));
    form.addEventListener("change", ({ target }) => this.changed(target));
    form.addEventListener("submit", (event) => this.submitted(event));
    element("conflict")?.addEventListener("submit", (event) => this.chosen(event));
    element("conflict")?.addEventListener("click", ({ target }) => {
      if (target instanceof HTMLElement && target.dataset.takeTheirs !== undefined)
        drafts.write(this.key, undefined);
    });
    element("steps-back")?.addEventListener("submit", (event) => this.stepped(event));
    this.restore();
  }

  /** Undoing waits for a save that is under way: what was just typed is what it takes back. */
  private stepped(event: Event): void {
    const action = event.target instanceof HTMLFormElement ? event.target.getAttribute("action") : null;
    if (!this.saving || action === null) return;
    event.preventDefault();
    void this.saving.then((saved) => {
      const form = document.querySelector<HTMLFormElement>(`#steps-back form[action="${action}"]`);
      if (saved) form?.submit();
    });
  }

  private hidden(name: string): HTMLInputElement {
    const found = this.form.elements.namedItem(name);
    if (!(found instanceof HTMLInputElement)) throw new Error(`no input ${name}`);
    return found;
  }

  private remember(target: unknown): void {
    if (!isInput(target) || target.name.startsWith("#")) return;
    if (Object.keys(this.kept.values).length === 0) {
      this.kept = { base: this.hidden("#base").value, values: {} };
    }
    this.kept.values[target.name] = sentOf(target);
    drafts.write(this.key, this.kept);
  }

  private restore(): void {
    const found = drafts.read(this.key);
    if (!found) return;
    const differing = Object.entries(found.values).filter(([name, value]) => {
      const input = inputNamed(this.form, name);
      return input && sentOf(input) !== value;
    });
    if (differing.length === 0) {
      drafts.write(this.key, undefined);
      return;
    }
    for (const [name, value] of differing) {
      const input = inputNamed(this.form, name);
      if (input) putValue(input, value);
    }
    this.kept = found;
    this.hidden("#base").value = found.base;
    this.hidden("#expected").value = found.base;
    say("What you had typed here is back in its fields.");
    void this.save();
  }

  private changed(target: unknown): void {
    if (!isInput(target) || target.name === "#author") return;
    this.remember(target);
    const isWay = target.dataset.way !== undefined;
    void this.save().then((saved) => {
      if (saved && isWay) this.reload(target.id);
    });
  }

  private reload(id: string): void {
    location.hash = id;
    location.reload();
  }

  private submitted(event: SubmitEvent): void {
    const button = event.submitter;
    const isAct = button instanceof HTMLButtonElement && button.name === "act";
    if (isAct && Object.keys(this.kept.values).length === 0 && !this.saving) return;
    event.preventDefault();
    void this.save().then((saved) => {
      if (saved && isAct) this.form.requestSubmit(button);
    });
  }

  /** Saves what is in the form, after a save that is under way. @returns whether it was kept */
  private save(): Promise<boolean> {
    if (this.inConflict) {
      say("Not saved: first choose between the two values above.");
      element("conflict-told")?.focus();
      return Promise.resolve(false);
    }
    if (this.saving) {
      this.again = true;
      return this.saving;
    }
    this.saving = this.send().finally(() => {
      this.saving = undefined;
    });
    return this.saving;
  }

  private async send(): Promise<boolean> {
    let saved: boolean;
    do {
      this.again = false;
      const sent = { ...this.kept.values };
      saved = await this.ask(new URLSearchParams(pairs(this.form)), sent);
    } while (saved && this.again);
    return saved;
  }

  private async ask(body: URLSearchParams, sent: Record<string, string>): Promise<boolean> {
    say("Saving");
    try {
      const response = await post(this.form, body);
      if (response.status === 409) {
        const reply: { conflict?: string } = await response.json();
        this.tellConflict(reply.conflict ?? "");
        return false;
      }
      if (response.status === 401) {
        this.retryLater("you are signed out. Sign in in another tab; what you typed is kept in this browser");
        return false;
      }
      if (!response.ok) throw new Error(String(response.status));
      this.apply(await response.json(), sent);
      return true;
    } catch {
      this.retryLater("no answer. What you typed is kept in this browser");
      return false;
    }
  }

  private retryLater(why: string): void {
    const seconds = Math.round(this.wait / 1000);
    say(`Not saved yet: ${why}; next try in ${seconds} seconds.`);
    setTimeout(() => void this.save(), this.wait);
    this.wait = Math.min(this.wait * 2, longestWait);
  }

  private tellConflict(html: string): void {
    this.inConflict = true;
    put("conflict", html);
    say("Not saved: someone else saved this study meanwhile. Both values are shown above the form.");
    element("conflict-told")?.focus();
  }

  private apply(answer: SavedAnswer, sent: Record<string, string>): void {
    this.wait = firstWait;
    this.hidden("#base").value = String(answer.revision);
    this.hidden("#expected").value = String(answer.revision);
    const newer = Object.entries(this.kept.values).filter(([name, value]) => sent[name] !== value);
    this.kept = { base: String(answer.revision), values: Object.fromEntries(newer) };
    drafts.write(this.key, this.kept);
    // What was typed while it was saved has a newer balance, or is about to.
    const isLatest = newer.length === 0;
    if (isLatest) put("balance", answer.balance);
    put("steps-back", answer.steps);
    put("error-summary", answer.summary);
    put("levels", answer.levels);
    const standing = element("standing");
    if (standing) standing.textContent = answer.standing;
    for (const mark of document.querySelectorAll<HTMLElement>("[data-mark]")) {
      mark.textContent = answer.marks[mark.dataset.mark ?? ""] ?? "";
    }
    if (isLatest) this.form.dispatchEvent(new Event("saved"));
    for (const field of answer.fields) showError(field);
    for (const row of answer.rows) showTitle(row);
    for (const each of answer.written) this.write(each);
    say([`Saved, revision ${answer.revision}.`, ...answer.converted.map(({ text }) => text)].join(" "));
    for (const each of answer.converted) if (each.typed !== "") this.offerMeant(each);
  }

  /** Shows an input as the study has it, unless it was typed in again meanwhile. */
  private write({ id, value, unitName, unit }: SavedAnswer["written"][number]): void {
    const input = element(id);
    if (!isInput(input) || Object.hasOwn(this.kept.values, input.name)) return;
    input.value = value;
    const select = this.form.elements.namedItem(unitName);
    if (select instanceof HTMLSelectElement && !Object.hasOwn(this.kept.values, unitName))
      select.value = unit;
  }

  /** A way back for who meant to correct the unit, and not to convert the number. */
  private offerMeant({ name, typed, unit }: SavedAnswer["converted"][number]): void {
    const button = document.createElement("button");
    button.type = "button";
    button.className = "plain small";
    button.textContent = `It was ${typed} ${unit}`;
    button.addEventListener("click", () => {
      const input = inputNamed(this.form, name);
      if (!input) return;
      input.value = typed;
      this.changed(input);
      input.focus();
    });
    element("save-state")?.append(" ", button);
  }

  /** The form of a conflict: sent like the page's own, so that a failure loses nothing. */
  private chosen(event: Event): void {
    const form = event.target;
    if (!(form instanceof HTMLFormElement)) return;
    event.preventDefault();
    post(form, new URLSearchParams(pairs(form)))
      .then(async (response) => {
        if (response.status === 409) {
          const reply: { conflict?: string } = await response.json();
          this.tellConflict(reply.conflict ?? "");
        } else if (response.ok) {
          drafts.write(this.key, undefined);
          location.reload();
        } else throw new Error(String(response.status));
      })
      .catch(() => say("Not saved yet: no answer. What you typed is kept; choose again in a moment."));
  }
}

const pageForm = document.querySelector<HTMLFormElement>("form[data-study]");
if (pageForm && !pageForm.querySelector("fieldset.whole[disabled]")) new PageForm(pageForm);
