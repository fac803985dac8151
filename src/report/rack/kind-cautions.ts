import type { ReportContext } from "../document/context.js";
import { capitalised } from "../words/format.js";

/** A caution for all structures of one kind. */
export interface KindCaution {
  readonly kind: string;
  readonly text: string;
}

/** Cautions of the kinds of structure that the study has, each kind once. */
export function kindCautions({ traced }: ReportContext): KindCaution[] {
  const known = new Map<string, string>();
  for (const { kindName, cautions } of traced.structures) if (cautions) known.set(kindName, cautions);
  return [...known].map(([kind, text]) => ({ kind: capitalised(kind), text }));
}
