/**
 * Shows a page again once what it waits for is worked out, and meanwhile how far that is and what is told of it early. Without it
 * a link asks again.
 */

interface UnderWay {
  readonly progress?: { readonly done: number; readonly planned: number };
  readonly early?: { readonly lakes: number };
}

const usualSeconds = 2;
/** While draws are made, whose figures come soon and grow better. */
const drawingSeconds = 0.5;

async function ask(place: HTMLElement, shown: number): Promise<void> {
  const response = await fetch(place.dataset.awaits ?? "");
  if (response.status !== 202) {
    if (response.ok) location.reload();
    return;
  }
  const { progress, early }: UnderWay = await response.json();
  const told = early?.lakes ?? 0;
  const hasBegun = progress && place.querySelector("[data-waits]");
  if (told > shown || hasBegun) await showAnew(place);
  else if (progress) showProgress(place, progress);
  const later = Number(response.headers.get("Retry-After")) || usualSeconds;
  const seconds = progress ? drawingSeconds : later;
  setTimeout(() => void ask(place, Math.max(shown, told)), seconds * 1000);
}

function showProgress(place: HTMLElement, { done, planned }: NonNullable<UnderWay["progress"]>): void {
  const bar = place.querySelector("progress");
  if (bar) {
    bar.max = Math.max(1, planned);
    bar.value = done;
  }
  for (const count of place.querySelectorAll("[data-count]")) count.textContent = `${done} of ${planned}`;
}

const standing = (page: Document) => page.getElementById("standing")?.textContent;

/** Takes the place's content from the page as it is now, and all of it where the study was changed meanwhile. */
async function showAnew(place: HTMLElement): Promise<void> {
  const response = await fetch(location.href);
  const page = new DOMParser().parseFromString(await response.text(), "text/html");
  const now = page.querySelector(`[data-awaits="${place.dataset.awaits}"]`);
  if (now && standing(page) === standing(document)) place.replaceChildren(...now.childNodes);
  else location.reload();
}

for (const place of document.querySelectorAll<HTMLElement>("[data-awaits]")) void ask(place, 0);
