/**
 * Loads what draws charts once one is in sight: it is twice the rest of a page, and the pages of a study have their charts
 * in sections that are folded at first.
 */

const scripts = [
  { src: "/assets/chart.js", type: "" },
  { src: "/assets/svg-canvas.js", type: "" },
  { src: "/assets/draw-charts.js", type: "module" },
];

const isFolded = (chart: Element) => chart.closest("details:not([open])") !== null;

let areLoaded = false;

function loadForCharts(): void {
  if (areLoaded || [...document.querySelectorAll("[data-chart]")].every(isFolded)) return;
  areLoaded = true;
  for (const each of scripts) {
    const script = Object.assign(document.createElement("script"), each);
    // In the order in which they are told.
    script.async = false;
    document.head.append(script);
  }
}

document.addEventListener("toggle", loadForCharts, { capture: true });
loadForCharts();

export {};
