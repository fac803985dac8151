import { availableParallelism } from "node:os";
import { defineConfig } from "vitest/config";

/** Bounds a hang and measures nothing: a busy machine takes several times as long as a quiet one, for a browser above all. */
const longest = 600_000;

export default defineConfig({
	test: {
		include: ["tests/**/*.test.ts"],
		testTimeout: longest,
		hookTimeout: longest,
		teardownTimeout: longest,
		// The default leaves a processor idle: with two, that doubles the time.
		maxWorkers: availableParallelism(),
		// Files of one worker share modules: loading them anew for each took a third of all time.
		isolate: false,
	},
});
