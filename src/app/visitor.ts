import { AsyncLocalStorage } from "node:async_hooks";
import type { AccessRole } from "../store/access.js";

/** Who asks, as far as it is known. */
export interface Visitor {
  /** Empty where no access keys are set. */
  readonly name: string;
  readonly role: AccessRole;
}

const current = new AsyncLocalStorage<Visitor>();

/** Someone at this machine, where no keys are set. */
export const anyone: Visitor = { name: "", role: "edit" };

export const visitor = (): Visitor => current.getStore() ?? anyone;

/** Does work, and all that it begins, in a visitor's name. */
export const asVisitor = <Result>(who: Visitor, work: () => Result): Result => current.run(who, work);

/** The name to keep beside a change: of who is signed in, or else what was typed. */
export const authorFor = (typed: string): string => visitor().name || typed;

export const mayOnlyRead = (): boolean => visitor().role === "read";
