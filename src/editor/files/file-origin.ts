const ofFile = "File ";

interface OfFile {
  /** As its author told now. */
  readonly told: string | undefined;
  /** As the study has it. */
  readonly before: unknown;
  readonly fileName: string;
  /** Whether something of the files before stays beside what is read. */
  readonly isAdded?: boolean;
}

/** Where values of a file come from: as told now, as told before, or the file itself. */
export function fileOrigin({ told, before, fileName, isAdded = false }: OfFile): string {
  if (told !== undefined) return told;
  if (typeof before !== "string") return `${ofFile}${fileName}`;
  if (!isFileOrigin(before)) return before;
  const files = isAdded
    ? before
        .slice(ofFile.length)
        .split(and)
        .filter((each) => each !== fileName)
    : [];
  const named = `${ofFile}${[...files, fileName].join(and)}`;
  return named.length <= longest ? named : `${ofFile}${fileName}${and}those before`;
}
const and = " and ";
/** Of a short text of a study. */
const longest = 200;

/** Whether nobody told where values come from, but for the name of their file. */
export const isFileOrigin = (origin: string): boolean => origin.startsWith(ofFile);
