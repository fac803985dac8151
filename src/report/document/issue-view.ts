/** What an issued report prints about itself. */
export interface IssueView {
  readonly number: number;
  readonly issued: string;
  readonly note: string;
  readonly revision: number;
  readonly supersedes: string;
  readonly engineVersion: string;
  readonly seed: string;
  readonly digest: string;
  /** Fingerprint of the key. */
  readonly signedBy: string;
  /** Digest of the method document of its version. */
  readonly method: string;
  readonly attached: string;
}
