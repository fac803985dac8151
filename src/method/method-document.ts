import { sha256 } from "../assumptions/digest.js";
import type { AssumptionSet } from "../assumptions/entry.js";
import { programVersion } from "../assumptions/version.js";
import { once } from "../model/computed-once.js";
import { type AssetSource, renderPage } from "../report/document/render-page.js";
import type { PrintSettings } from "../report/print/pdf.js";
import { isolateRightToLeft } from "../report/words/right-to-left.js";
import type { StudyRun } from "../study/prepare/compute.js";
import { forXml } from "../study/reading/characters.js";
import { type MethodView, methodView, ownSheetsView } from "./method-view.js";
import { type LakePaths, pathsOf } from "./paths/paths.js";
import { sheetContext } from "./sheet-context.js";

/** What is the same in every copy of a version's method document. */
interface Content {
  readonly view: MethodView;
  /** HTML from the first heading to the last source: nothing in it depends on time, machine or study. */
  readonly body: () => string;
  /** Of the same without the paths of its lakes, which take longer to compute than an issue may wait. */
  readonly digest: string;
}

const known = new WeakMap<AssumptionSet, Content>();

function contentOf(assumptions: AssumptionSet): Content {
  const found = known.get(assumptions);
  if (found) return found;
  const view = methodView(assumptions);
  const bodyWith = (paths: readonly LakePaths[]) => renderPage("partials/method-content", { ...view, paths });
  const content = {
    view,
    body: once(() => bodyWith(pathsOf(assumptions, sheetContext))),
    digest: sha256(bodyWith([])),
  };
  known.set(assumptions, content);
  return content;
}

/** SHA-256 of the method's content, by which an issued report tells what it was computed by. */
export const methodDigest = (assumptions: AssumptionSet): string => contentOf(assumptions).digest;

function documentView(assumptions: AssumptionSet, run: StudyRun | undefined) {
  const { view, body, digest } = contentOf(assumptions);
  const own = run && ownSheetsView(run);
  return {
    title: titleOf(run),
    version: programVersion(),
    example: view.example,
    contents: contentsOf(body()),
    content: body(),
    digest,
    own,
  };
}

interface ContentsLine {
  readonly id: string;
  /** HTML, as the heading has it. */
  readonly title: string;
  /** Whether it stands within the section before. */
  readonly isWithin: boolean;
}

/** The headings that have an id, so that the contents lack none. */
const contentsOf = (html: string): ContentsLine[] =>
  [...html.matchAll(/<h([23]) id="([^"]+)">([^<]+)</g)].map(([, order, id = "", title = ""]) => ({
    id,
    title,
    isWithin: order === "3",
  }));

/** The method document as a page. @param run adds the worked sheets of its study */
export const renderMethod = (
  assumptions: AssumptionSet,
  source: AssetSource,
  links: object = {},
  run?: StudyRun,
): string =>
  forXml(
    isolateRightToLeft(renderPage("method", { ...documentView(assumptions, run), assets: source, links })),
  );

/** The same without its page, for a press. */
export const renderMethodBody = (assumptions: AssumptionSet, run?: StudyRun): string =>
  forXml(isolateRightToLeft(renderPage("partials/method-body", documentView(assumptions, run))));

/** Letter, unless it is printed for a study that is in metric units. */
export const methodPrintSettings = (run?: StudyRun): PrintSettings => ({
  title: titleOf(run),
  paper: run?.document.study.units === "si" ? "a4" : "letter",
  edition: `version ${programVersion()}`,
});

const titleOf = (run: StudyRun | undefined) =>
  run
    ? `Ramp & Rack: the method, with worked sheets of ${run.document.study.name}`
    : "Ramp & Rack: the method";
