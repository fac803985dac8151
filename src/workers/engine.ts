import { setFlagsFromString } from "node:v8";

/**
 * The engine translates functions some six times later than that of Node 20 would, and in pieces less than half as large (it
 * has 67,584, 460 and 920): it does so anew in each thread, which took 29 % of a worker's time for its first 160 lakes, and
 * a third of the processor time of a command that is done in a second. Flags are those of the process.
 */
export function translateLess(): void {
  setFlagsFromString("--interrupt-budget=400000");
  setFlagsFromString("--max-inlined-bytecode-size=200");
  setFlagsFromString("--max-inlined-bytecode-size-cumulative=300");
}
