/** What keeps work from being done, in words for whoever asked for it. Anything else that is thrown is a fault in the code. */
export class PlainError extends Error {
  /** Whether whoever asked has to correct something, as against the machine or the folder. */
  readonly isToCorrect: boolean = false;
}
