import type { Problem } from "../study/reading/problems.js";
/** What a reader is told of an error. */
export interface Explained {
  readonly status: number;
  readonly headers: Readonly<Record<string, string>>;
  readonly title: string;
  readonly problems: readonly Problem[];
  /** What happened, and the way out. */
  readonly advice: readonly string[];
  readonly links: readonly { readonly href: string; readonly label: string }[];
  /** What may be done about it at once, by a form whose fields nobody fills in. */
  readonly actions: readonly {
    readonly action: string;
    readonly label: string;
    readonly fields?: readonly { readonly name: string; readonly value: string }[];
  }[];
}
