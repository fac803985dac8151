import { fileURLToPath } from "node:url";

/** Root of the project: one folder up from the compiled file or from the source file. The only file that asks where it stands. */
export const projectRoot = fileURLToPath(new URL("..", import.meta.url));
