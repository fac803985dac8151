const ofFile = "File ";

/** Where values of a file come from: as told now, as told before, or the file itself. */
export function fileOrigin(told: string | undefined, before: unknown, fileName: string): string {
  if (told !== undefined) return told;
  return typeof before === "string" && !isFileOrigin(before) ? before : `${ofFile}${fileName}`;
}

/** Whether nobody told where values come from, but for the name of their file. */
export const isFileOrigin = (origin: string): boolean => origin.startsWith(ofFile);
