import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { runInThisContext } from "node:vm";
import type Handlebars from "handlebars";
import { projectRoot } from "../../project-root.js";

/** Templates as code by their texts: to compile those of a report takes as long as to fill them in. `npm run build` writes it. */
export const compiledViewsFile = join(projectRoot, "dist", "report", "document", "compiled-views.json");

type Engine = typeof Handlebars;
type CompiledViews = Readonly<Record<string, string>>;

const settings = { strict: true };
let kept: CompiledViews | undefined;

/** Nothing where the program was compiled without its build. */
function compiledViews(): CompiledViews {
  kept ??= existsSync(compiledViewsFile)
    ? (JSON.parse(readFileSync(compiledViewsFile, "utf8")) as CompiledViews)
    : {};
  return kept;
}

/** A template that is compiled when it is first filled in, unless its text is to the letter as it was at the build. */
export function templateOf(
  engine: Engine,
  text: string,
  views: CompiledViews = compiledViews(),
): HandlebarsTemplateDelegate {
  const code = views[text];
  if (code === undefined) return engine.compile(text, settings);
  let template: HandlebarsTemplateDelegate | undefined;
  return (view, options) => {
    template ??= engine.template(runInThisContext(`(${code})`) as TemplateSpecification);
    return template(view, options);
  };
}

/** What to write at the build, without texts that are no templates: the page that needs one tells its fault. */
export const toKeep = (engine: Engine, texts: readonly string[]): CompiledViews =>
  Object.fromEntries(
    texts.flatMap((text) => {
      try {
        return [[text, String(engine.precompile(text, settings))]];
      } catch {
        return [];
      }
    }),
  );
