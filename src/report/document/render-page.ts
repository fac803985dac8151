import { readdirSync, readFileSync } from "node:fs";
import { basename, join } from "node:path";
import Handlebars from "handlebars";
import { appendixTitles } from "../../study/format/report-schema.js";
import { unbrokenMinus } from "../words/minus.js";
import { type TableView, tableFileName } from "../words/view-types.js";
import { type Assets, assets, viewsFolder } from "./assets.js";
import { templateOf } from "./compiled-views.js";

const partialsFolder = join(viewsFolder, "partials");
const engine = Handlebars.create();
engine.registerHelper("tableClass", tableClass);
engine.registerHelper("tableFile", tableFileName);
engine.registerHelper("appendixTitle", (id: string) => appendixTitles[id]);
engine.registerHelper("joined", (parts: readonly unknown[], between: string) => parts.join(between));
let partialsRead = false;
const templates = new Map<string, HandlebarsTemplateDelegate>();

/** Most rows of a table that is kept on one page; longer ones break with their head repeated. */
const mostRowsTogether = { plain: 26, compact: 36 };

function tableClass({ rows, compact }: TableView): string {
  const most = compact ? mostRowsTogether.compact : mostRowsTogether.plain;
  return [compact ? "compact" : "", rows.length <= most ? "whole" : ""].filter(Boolean).join(" ");
}

function readPartials(): void {
  if (partialsRead) return;
  for (const file of readdirSync(partialsFolder)) {
    const text = readFileSync(join(partialsFolder, file), "utf8");
    engine.registerPartial(basename(file, ".hbs"), templateOf(engine, text));
  }
  partialsRead = true;
}

/** A template by its file in the views folder. */
function template(path: string): HandlebarsTemplateDelegate {
  readPartials();
  const known = templates.get(path);
  if (known) return known;
  const compiled = templateOf(engine, readFileSync(join(viewsFolder, `${path}.hbs`), "utf8"));
  templates.set(path, compiled);
  return compiled;
}

/** Whom a page is for: templates find it as `@reader`. */
interface Reader {
  /** Of who is signed in; empty where nobody needs to be. */
  readonly name: string;
  readonly changesNothing: boolean;
}

const anyReader: Reader = { name: "", changesNothing: false };

/** A page of the server, or another from the views. */
export function renderPage(name: string, view: object, reader = anyReader): string {
  const html = template(name)(view, {
    allowedProtoProperties: {},
    allowedProtoMethods: {},
    data: { reader },
  });
  return unbrokenMinus(html);
}

/** Where a page takes style and scripts from: its own text, or the server's asset addresses. */
export type AssetSource = { readonly inline: Assets } | { readonly inline: false };

export const inlineAssets = (): AssetSource => ({ inline: assets() });
export const linkedAssets: AssetSource = { inline: false };

/**
 * The empty page into which reports are put for printing.
 * @param nonce nobody can guess: only scripts that bear it run, and so none that comes with a report
 */
export const renderPress = (nonce: string): string => renderPage("press", { assets: inlineAssets(), nonce });
