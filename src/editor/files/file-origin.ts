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
  const name = keptName(fileName);
  if (typeof before !== "string") return `${ofFile}${name}`;
  if (!isFileOrigin(before)) return before;
  const files = isAdded
    ? before
        .slice(ofFile.length)
        .split(and)
        .filter((each) => keptName(each) !== name)
    : [];
  const named = `${ofFile}${[...files, name].join(and)}`;
  return named.length <= longestText ? named : `${ofFile}${name}${and}those before`;
}
const and = " and ";

/** A text that a study keeps, cut where it is longer. */
const cut = (text: string, longest: number): string =>
  text.length <= longest ? text : `${text.slice(0, longest - 1)}…`;
/** Of a short text of a study. */
const longestText = 200;
const longestName = 60;

export const keptText = (text: string): string => cut(text, longestText);
/** The name of a file, so that there is room beside it. */
export const keptName = (fileName: string): string => cut(fileName, longestName);

/** Whether nobody told where values come from, but for the name of their file. */
export const isFileOrigin = (origin: string): boolean => origin.startsWith(ofFile);
