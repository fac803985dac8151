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

/** HTML of a text, safe to be set into a page. */
export const ownTextHtml = (text: string): string => markdown.render(text);
