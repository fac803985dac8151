/** What was typed and not saved yet, kept in this browser. */
export interface Kept {
  readonly base: string;
  readonly values: Record<string, string>;
}

/** The store of this browser may be switched off: then typing is kept by saving alone. */
export const drafts = {
  read(key: string): Kept | undefined {
    try {
      return JSON.parse(localStorage.getItem(key) ?? "null") ?? undefined;
    } catch {
      return undefined;
    }
  },
  write(key: string, kept: Kept | undefined): void {
    try {
      if (kept && Object.keys(kept.values).length > 0) localStorage.setItem(key, JSON.stringify(kept));
      else localStorage.removeItem(key);
    } catch {
      // Nothing to do: the values stay in the form.
    }
  },
};
