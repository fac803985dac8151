import { mayOnlyRead, visitor } from "../app/visitor.js";
import { renderPage as rendered } from "../report/document/render-page.js";

/** A page for whoever asks. */
export const renderPage = (name: string, view: object): string =>
  rendered(name, view, { name: visitor().name, changesNothing: mayOnlyRead() });
