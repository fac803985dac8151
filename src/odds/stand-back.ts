import { setPriority } from "node:os";

/**
 * Lets this thread stand back for others that have work. On Linux a thread has a priority of its own; elsewhere it would
 * be that of the whole process.
 * @param niceness from 0 to 19
 */
export function standBack(niceness: number): void {
  if (process.platform === "linux" && niceness > 0) setPriority(niceness);
}
