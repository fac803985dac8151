import { fileURLToPath } from "node:url";

/** Root of the project: one folder up from the compiled file or from the source file. Files that find others of the project ask it, since what is gathered stands elsewhere. */
export const projectRoot = fileURLToPath(new URL("..", import.meta.url));
