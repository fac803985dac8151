import { PlainError } from "../plain-error.js";
import { needNativePart } from "../store/native-part.js";

/** The end of a build: whoever serves may have neither a compiler nor the right to write here. */
try {
  needNativePart();
} catch (error) {
  if (!(error instanceof PlainError)) throw error;
  console.error(error.message);
  process.exitCode = 1;
}
