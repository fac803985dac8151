import type { Kept } from "../issue/authenticity.js";
import type { SigningKey } from "../issue/signing-key.js";
import type { Claim } from "../issue/verify.js";
import type { IssueStore } from "../store/issues.js";

/** Looks up what is kept here of a file, and of what it claims to be. @throws StoreError, SigningKeyError */
export function keptOf(
  issues: IssueStore,
  key: SigningKey,
  pdf: Uint8Array,
): (claim: Claim | undefined) => Kept {
  return (claim) => {
    const isSame = issues.hasBytes(pdf);
    const known = claim && issues.withDigest(claim.digest);
    const claimed = claim && (known ?? issues.find(claim.studyId, claim.number));
    const found = claim
      ? (claim.part === "board" && claimed?.boardPdf) || claimed?.pdf
      : issues.startedBy(pdf);
    return {
      isSame,
      isKnown: known !== undefined,
      ...(found && !isSame ? { pdf: found } : {}),
      isOwnStudy: claim !== undefined && issues.knowsStudy(claim.studyId),
      fingerprint: key.fingerprint(),
    };
  };
}
