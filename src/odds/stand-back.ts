import { getPriority, setPriority } from "node:os";

const leastPriority = 19;

/**
 * Lets this thread stand back for others that have work. On Linux a thread has a priority of its own; elsewhere it would
 * be that of the whole process.
 * @param niceness from 0 to 19, added to that of the process: who is not root may only lower a priority
 */
export function standBack(niceness: number): void {
  if (process.platform !== "linux" || niceness === 0) return;
  setPriority(Math.min(leastPriority, getPriority() + niceness));
}
