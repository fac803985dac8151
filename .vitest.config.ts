import { availableParallelism } from "node:os";
import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

/** Bounds a hang and measures nothing: a busy machine takes several times as long as a quiet one, for a browser above all. */
const longest = 600_000;

const sources = fileURLToPath(new URL("src", import.meta.url));

export default defineConfig({
	resolve: {
		// By hand a trial runs against the compiled product; within a test, against the sources, as the test does.
		alias: [{ find: /^#product\/(.*)\.js$/, replacement: `${sources}/$1.ts` }],
	},
	test: {
		include: ["tests/**/*.test.ts"],
		// Some tests start a trial's own process; what takes long is made once in a run.
		globalSetup: ["tests/trials/compile.ts", "tests/kept-in-run.ts"],
		testTimeout: longest,
		hookTimeout: longest,
		teardownTimeout: longest,
		// The default leaves a processor idle: with two, that doubles the time.
		maxWorkers: availableParallelism(),
		// Files of one worker share modules: loading them anew for each took a third of all time.
		isolate: false,
		// What a module compiles to is kept in node_modules from run to run, by its content.
		experimental: { fsModuleCache: true },
		// As the product runs: with the usual young generation a fifth of all time went to collecting garbage.
		execArgv: ["--single-threaded-gc", "--max-semi-space-size=64"],
	},
});
