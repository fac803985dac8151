import { balanceLine } from "../report/balance-line.js";
import { linkedAssets } from "../report/html.js";
import { reportView } from "../report/report-view.js";
import type { StudyRun } from "../study/compute.js";
import { type Problem, sentence } from "../study/problems.js";
import type { ShelfEntry } from "./study-shelf.js";
import { workbenchPage } from "./workbench-page.js";

/** The list of studies, with what to do when there are none of one's own. */
export function listPage(entries: readonly ShelfEntry[]): object {
  const shown = entries.map(({ id, name, isExample, revision, savedAt }) => ({
    href: `/studies/${id}`,
    name,
    detail: isExample ? "invented example" : `revision ${revision}, ${savedAt.slice(0, 10)}`,
    isExample,
  }));
  return {
    title: "Studies",
    assets: linkedAssets,
    own: shown.filter(({ isExample }) => !isExample),
    examples: shown.filter(({ isExample }) => isExample),
  };
}

/** The comparison of one study on screen: the board's page and the balance. */
export function comparisonPage(entry: ShelfEntry, run: StudyRun, links: object): object {
  return workbenchPage(
    { entry, balance: { line: balanceLine(run) }, part: "results", title: "Results" },
    { ...reportView(run), links, drawsCharts: true },
  );
}

export function problemPage(title: string, problems: readonly Problem[]): object {
  return { title, assets: linkedAssets, problems: problems.map(sentence) };
}
