import { renderPage as rendered } from "../report/html.js";
import { mayOnlyRead, visitor } from "./access/visitor.js";

/** A page for whoever asks. */
export const renderPage = (name: string, view: object): string =>
  rendered(name, view, { name: visitor().name, changesNothing: mayOnlyRead() });
