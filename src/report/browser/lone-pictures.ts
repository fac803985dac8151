/** A picture as SVG that needs no style sheet and no other element of the page. */
interface LonePicture {
  readonly name: string;
  readonly title: string;
  readonly alternative: string;
  readonly svg: string;
}

const namespace = "http://www.w3.org/2000/svg";

/** Parts that a rule of the style sheet may reach: of a chart, which has its own attributes, and of what templates draw. */
const styledParts = { chart: ":scope [class], :scope [class] *", drawing: "*" };

/** Properties that the style sheet gives to parts of a picture. */
const styled = [
  ...["fill", "stroke", "stroke-width", "stroke-dasharray"],
  ...["font-family", "font-size", "font-weight", "text-anchor"],
];

/** Every picture of the report on the page. */
function lonePictures(): LonePicture[] {
  return [...document.querySelectorAll("figure")].flatMap((figure) => {
    const svg = figure.querySelector("svg");
    if (!svg) return [];
    const place = figure.querySelector<HTMLElement>("[data-chart]");
    const title = figure.matches(".balance")
      ? document.getElementById("question")
      : (figure.querySelector("figcaption") ?? figure.parentElement?.querySelector("h3"));
    const picture = {
      name: place ? place.id.replace(/^chart-/, "") : figure.className,
      title: title?.textContent ?? "",
      alternative: svg.getAttribute("aria-label") ?? "",
    };
    return [{ ...picture, svg: aloneText(svg, picture, place ? "chart" : "drawing") }];
  });
}

function aloneText(
  svg: SVGSVGElement,
  picture: Omit<LonePicture, "svg">,
  kind: keyof typeof styledParts,
): string {
  const copy = svg.cloneNode(true) as SVGSVGElement;
  inlineStyles(svg, copy, styledParts[kind]);
  const { width, height } = svg.viewBox.baseVal;
  copy.setAttribute("width", String(width));
  copy.setAttribute("height", String(height));
  copy.setAttribute("role", "img");
  for (const name of ["aria-hidden", "aria-label"]) copy.removeAttribute(name);
  const hatch = document.getElementById("hatch");
  copy.prepend(
    textElement("title", picture.title),
    textElement("desc", picture.alternative),
    ...(hatch ? [definitionOf(hatch)] : []),
  );
  return withOwnIds(copy, picture.name);
}

function inlineStyles(from: Element, to: Element, parts: string): void {
  const originals = from.querySelectorAll(parts);
  to.querySelectorAll(parts).forEach((element, index) => {
    const original = originals[index];
    if (!original) return;
    const style = getComputedStyle(original);
    for (const name of styled) element.setAttribute(name, style.getPropertyValue(name));
    element.removeAttribute("class");
  });
}

function textElement(name: "title" | "desc", text: string): Element {
  const element = document.createElementNS(namespace, name);
  element.textContent = text;
  return element;
}

function definitionOf(original: Element): Element {
  const definitions = document.createElementNS(namespace, "defs");
  const copy = original.cloneNode(true) as Element;
  inlineStyles(original, copy, styledParts.drawing);
  definitions.append(copy);
  return definitions;
}

/** Ids that are the same each time, and differ from those of other pictures on one page. */
function withOwnIds(copy: Element, name: string): string {
  const renamed = new Map<string, string>();
  for (const element of copy.querySelectorAll("[id]")) {
    const own = `${name}-${renamed.size + 1}`;
    renamed.set(element.id, own);
    element.id = own;
  }
  return new XMLSerializer()
    .serializeToString(copy)
    .replace(/url\((?:&quot;|")?#([^)"&]+)(?:&quot;|")?\)/g, (whole, id: string) => {
      const own = renamed.get(id);
      return own === undefined ? whole : `url(#${own})`;
    });
}

/** Puts pictures on the page one below the other. */
function putPictures(svgs: readonly string[]): void {
  const main = document.querySelector("main");
  if (main) main.innerHTML = svgs.map((svg) => `<div class="lone-picture">${svg}</div>`).join("");
}

Object.assign(globalThis, { lonePictures, putPictures });
