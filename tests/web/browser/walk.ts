import type { Page } from "puppeteer";

/** A stop of the way through a page by the Tab key, as it was when the next one was pressed. */
interface Stop {
  /** Its place among all elements of the page; of radio buttons that of the first of their group. */
  readonly place: number;
  readonly name: string;
  /** Whether a line shows that it has the focus: 2 px and more, and 3 : 1 against what is behind it (WCAG 2.2, 1.4.11). */
  readonly isMarked: boolean;
  /** Whether any of it is in the window and under nothing that stays there (WCAG 2.2, 2.4.11). */
  readonly isSeen: boolean;
}

interface Walk {
  readonly expected: Pick<Stop, "place" | "name">[];
  readonly stops: Stop[];
  readonly twice: string[];
}

type Watched = Window & { walk?: Walk };

/** What somebody without a mouse meets on a page, by Tab from its top and once around, and by the link that skips. */
export async function keyboardFaults(page: Page, height = 720): Promise<string[]> {
  await page.setViewport({ width: page.viewport()?.width ?? 1280, height });
  const presses = await page.evaluate(watch);
  // Not one by one: the page receives them in this order, and to wait for each takes most of the time.
  await Promise.all(Array.from({ length: presses }, () => page.keyboard.down("Tab")));
  await page.keyboard.up("Tab");
  const walk = await page.evaluate(() => (window as Watched).walk);
  if (!walk || walk.expected.length < 2) return ["nothing can be reached by Tab"];
  return [...faultsOf(walk), ...(await nameless(page)), ...(await skipFaults(page))];
}

function faultsOf({ expected, stops, twice }: Walk): string[] {
  const round = stops.filter(({ place }) => place >= 0);
  const astray = [...expected, ...expected.slice(0, 1)].findIndex(
    ({ place }, index) => round[index]?.place !== place,
  );
  const told = ({ name }: Pick<Stop, "name">) => name;
  const way = expected[astray] ?? expected[0];
  return [
    ...(astray < 0 ? [] : [`Tab comes to ${round[astray]?.name} and not to ${way?.name}`]),
    ...round
      .filter(({ isMarked }) => !isMarked)
      .map((stop) => `no line around ${told(stop)} when it has the focus`),
    ...round.filter(({ isSeen }) => !isSeen).map((stop) => `${told(stop)} has the focus out of sight`),
    ...twice.map((id) => `the id ${id} is there twice`),
  ];
}

/** In the page: notes what can be reached, and what has the focus at each press of Tab. @returns presses for one round */
function watch(): number {
  const all = [...document.querySelectorAll("*")];
  const first = (element: Element) =>
    element instanceof HTMLInputElement && element.type === "radio"
      ? (document.querySelector(`input[name="${CSS.escape(element.name)}"]`) ?? element)
      : element;
  const placeOf = (element: Element) => all.indexOf(first(element));
  const nameOf = (element: Element) => {
    const label = element instanceof HTMLInputElement ? element.labels?.[0] : undefined;
    return `${(label ?? element).textContent?.trim().slice(0, 50)} <${element.localName} ${element.id}>`;
  };
  const light = (colour: string) => {
    const [red = 0, green = 0, blue = 0] = (colour.match(/[\d.]+/g) ?? [])
      .map((part) => Number(part) / 255)
      .map((part) => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4));
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
  };
  const behind = (element: Element): string => {
    const colour = getComputedStyle(element).backgroundColor;
    const above = element.parentElement;
    return / 0\)$/.test(colour) && above ? behind(above) : colour;
  };
  const isMarked = (element: Element) => {
    const drawn = getComputedStyle(element.querySelector(".reach") ?? element);
    const isShape = element instanceof SVGElement;
    const [width, colour] = isShape
      ? [drawn.stroke === "none" ? "0" : drawn.strokeWidth, drawn.stroke]
      : [drawn.outlineStyle === "none" ? "0" : drawn.outlineWidth, drawn.outlineColor];
    const around = element.parentElement ? light(behind(element.parentElement)) : 1;
    const [lighter, darker] = [Math.max(light(colour), around), Math.min(light(colour), around)];
    return Number.parseFloat(width) >= 2 && (lighter + 0.05) / (darker + 0.05) >= 3;
  };
  const isSeen = (element: Element) =>
    [...element.getClientRects()].some((box) => {
      const [left, right] = [Math.max(box.left, 0), Math.min(box.right, innerWidth)];
      const [top, bottom] = [Math.max(box.top, 0), Math.min(box.bottom, innerHeight)];
      if (right - left < 1 || bottom - top < 1) return false;
      return [0.5, 0.1, 0.9].some((across) =>
        [0.5, 0.1, 0.9].some((down) => {
          const hit = document.elementFromPoint(left + across * (right - left), top + down * (bottom - top));
          return hit !== null && element.contains(hit);
        }),
      );
    });
  const reached = all.filter(
    (each) =>
      each.matches("a[href], button, input, select, textarea, summary, [tabindex]") &&
      !each.matches("[tabindex='-1'], :disabled, [type=hidden]") &&
      each.checkVisibility({ visibilityProperty: true }),
  );
  const expected = [...new Set(reached.map(first))].map((each) => ({
    place: placeOf(each),
    name: nameOf(each),
  }));
  const ids = all.map(({ id }) => id).filter(Boolean);
  const walk: Walk = { expected, stops: [], twice: ids.filter((id, index) => ids.indexOf(id) !== index) };
  (window as Watched).walk = walk;
  const note = () => {
    const element = document.activeElement ?? document.body;
    const place = element === document.body ? -1 : placeOf(element);
    if (walk.stops.at(-1)?.place === place) return;
    walk.stops.push({ place, name: nameOf(element), isMarked: isMarked(element), isSeen: isSeen(element) });
  };
  document.addEventListener("keydown", note, { capture: true });
  // A date has a stop for each of its parts and one for its calendar.
  return expected.length + 3 * document.querySelectorAll("input[type=date]").length + 3;
}

/** What can have the focus and says nothing to who hears the page. */
async function nameless(page: Page): Promise<string[]> {
  const session = await page.createCDPSession();
  const { nodes } = await session.send("Accessibility.getFullAXTree");
  await session.detach();
  const holders = ["RootWebArea", "main", "form", "group"];
  return nodes
    .filter(({ ignored, role }) => !ignored && !holders.includes(String(role?.value)))
    .filter(({ properties, name }) => {
      const takesFocus = properties?.some((each) => each.name === "focusable" && each.value.value === true);
      return takesFocus && String(name?.value ?? "").trim() === "";
    })
    .map(
      ({ role, description }) => `a ${role?.value} has no name (${description?.value ?? "not described"})`,
    );
}

/** The first link of a page leads past its head: what comes after it is in what the page is about. */
async function skipFaults(page: Page): Promise<string[]> {
  await page.evaluate(() => document.querySelector<HTMLElement>("a.skip")?.focus());
  await page.keyboard.press("Enter");
  await page.keyboard.press("Tab");
  const comesTo = await page.evaluate(() => ({
    isInMain: document.activeElement?.closest("main") !== null,
    hasStops:
      document.querySelector("main :is(a[href], button, input, select, summary, [tabindex='0'])") !== null,
    isFirst:
      document.querySelector("body > nav, body > header") === null ||
      document.querySelector("body a, body button")?.matches("a.skip[href='#main']"),
  }));
  const isLed = comesTo.isInMain || !comesTo.hasStops;
  return [
    ...(comesTo.isFirst ? [] : ["the first link does not skip to the page"]),
    ...(isLed ? [] : ["the link that skips does not lead into the page"]),
  ];
}
