import type { WrittenStudy } from "../format/schema.js";

/** Well-formed parts of a document; the others are absent and reported elsewhere. */
export interface SoundParts {
  readonly study?: WrittenStudy["study"] | undefined;
  readonly lake?: WrittenStudy["lake"] | undefined;
  readonly boats?: WrittenStudy["boats"] | undefined;
  readonly options?: WrittenStudy["options"] | undefined;
  readonly money?: WrittenStudy["money"] | undefined;
  readonly overrides?: WrittenStudy["overrides"] | undefined;
  readonly search?: WrittenStudy["search"] | undefined;
  readonly report?: WrittenStudy["report"] | undefined;
  readonly structures: ReadonlyArray<{
    readonly index: number;
    readonly value: WrittenStudy["structures"][number];
  }>;
}
