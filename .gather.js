/**
 * Puts what each start loads into a few files in place of some six hundred, which the engine takes longer to find, open and
 * link than to run. What is loaded while it runs stays apart, in pieces. A compiled file may be named in place of all starts.
 */
import { readdirSync, rmSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const compiled = fileURLToPath(new URL("dist", import.meta.url));
/** What the engine is started with: commands, server, threads, the process that verifies. */
const starts = ["cli/main", "web/serve", "odds/worker", "app/answers/worker", "app/verify-process"];
/** Stay where they are installed: with machine code or threads or files of their own, or large and seldom loaded. */
const apart = [
	...["better-sqlite3", "chart.js", "pino", "piscina", "puppeteer", "svgcanvas"],
	...["@signpdf/signpdf", "asn1js", "hucre", "pkijs", "unpdf"],
];
const pieces = "pieces";

/** The file that asks where it stands has to stay there, too. */
const isApart = (name) =>
	name.endsWith("/project-root.js") || apart.some((each) => name === each || name.startsWith(`${each}/`));

/** In place, within the folder that holds all of them. */
async function gather(input, dir) {
	const { rolldown } = await import("rolldown");
	const bundle = await rolldown({
		...{ input, external: isApart, platform: "node" },
		checks: { ineffectiveDynamicImport: false },
	});
	const { output } = await bundle.write({ dir, chunkFileNames: `${pieces}/[name]-[hash].js` });
	return output.map(({ fileName }) => basename(fileName));
}

async function gatherStarts() {
	const files = starts.map((name) => [name, join(compiled, `${name}.js`)]);
	const written = await gather(Object.fromEntries(files), compiled);
	// Those that are as they were, were written over, for a server that runs meanwhile.
	for (const old of readdirSync(join(compiled, pieces)))
		if (!written.includes(old)) rmSync(join(compiled, pieces, old));
}

const [file] = process.argv.slice(2);
try {
	await (file ? gather(file, dirname(file)) : gatherStarts());
} catch (error) {
	console.error(`Each start loads its many files, which takes longer: ${error.message}`);
}
