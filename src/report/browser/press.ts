/** From draw-charts.ts, which the page loads before this script. */
declare const drawAll: () => void;

interface Face {
  readonly family: string;
  readonly weight: number;
  readonly style: string;
  readonly range: string;
  readonly data: string;
}

/** Waits for every face of the style sheet, used so far or not. */
async function loadFonts(): Promise<void> {
  await Promise.all([...document.fonts].map((face) => face.load()));
}

/** Adds faces for characters that those of the style sheet lack, and waits for them. */
async function addFaces(faces: readonly Face[]): Promise<void> {
  const added = faces.map(({ family, weight, style, range, data }) => {
    const face = new FontFace(family, `url(${data})`, { weight: String(weight), style, unicodeRange: range });
    document.fonts.add(face);
    return face.load();
  });
  await Promise.all(added);
}

/** Puts a report on the page and draws its charts. */
function putReport(body: string, title: string): void {
  document.title = title;
  const main = document.querySelector("main");
  if (main) main.innerHTML = body;
  drawAll();
}

/** Puts the style of the foot of each sheet on the page. */
function putFoot(css: string): void {
  const style = document.getElementById("foot");
  if (style) style.textContent = css;
}

Object.assign(globalThis, { addFaces, loadFonts, putFoot, putReport });
