import { availableParallelism } from "node:os";
import { defineConfig } from "vitest/config";

export default defineConfig({
	test: {
		include: ["tests/**/*.test.ts"],
		testTimeout: 40_000,
		// The default leaves a processor idle: with two, that doubles the time.
		maxWorkers: availableParallelism(),
		// Files of one worker share modules: loading them anew for each took a third of all time.
		isolate: false,
	},
});
