import MarkdownIt from "markdown-it";

/**
 * The author's own words: CommonMark without headings, pictures and links, which would disturb the outline, load
 * something or lead elsewhere; tags are printed as they were typed.
 */
const markdown = new MarkdownIt("default", { html: false, linkify: false, typographer: false }).disable([
  "heading",
  "lheading",
  "image",
  "link",
  "autolink",
  "reference",
  "html_block",
  "html_inline",
]);

/** Columns are aligned by a class: style attributes are refused on the server's pages. */
for (const cell of ["th_open", "td_open"]) {
  markdown.renderer.rules[cell] = (tokens, index, options, _environment, self) => {
    const token = tokens[index];
    if (token && String(token.attrGet("style")).endsWith("right")) token.attrSet("class", "num");
    if (token) token.attrs = (token.attrs ?? []).filter(([name]) => name !== "style");
    return self.renderToken(tokens, index, options);
  };
}

/** HTML of a text, safe to be set into a page. */
export const ownTextHtml = (text: string): string => markdown.render(text);
