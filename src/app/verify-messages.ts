import type { Kept } from "../issue/authenticity.js";
import type { Claim, Verification } from "../issue/verify.js";

/** What the process that verifies is sent, one after the other. */
export type ToProcess =
  | { readonly kind: "file"; readonly pdf: Uint8Array; readonly withOdds: boolean }
  | { readonly kind: "kept"; readonly kept: Kept };

/** What it sends: what the file claims, to be told what is kept of it, and then the answer. */
export type FromProcess =
  | { readonly kind: "claim"; readonly claim: Claim | undefined }
  | { readonly kind: "verification"; readonly verification: Verification };
