const kilobyte = 1024;

/** Size of a file for reading: "12 kB", "1.4 MB". */
export function sizeText(bytes: number): string {
  if (bytes < kilobyte * kilobyte) return `${Math.max(1, Math.round(bytes / kilobyte))} kB`;
  return `${(bytes / kilobyte / kilobyte).toFixed(1)} MB`;
}
