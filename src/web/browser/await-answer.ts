/** Shows a page again once what it waits for is worked out, and meanwhile how far that is. Without it a link asks again. */

interface UnderWay {
  readonly progress?: { readonly done: number; readonly planned: number };
}

const usualSeconds = 2;

async function ask(place: HTMLElement): Promise<void> {
  const response = await fetch(place.dataset.awaits ?? "");
  if (response.status !== 202) {
    if (response.ok) location.reload();
    return;
  }
  const { progress }: UnderWay = await response.json();
  const bar = place.querySelector("progress");
  if (bar && progress) {
    bar.max = Math.max(1, progress.planned);
    bar.value = progress.done;
  }
  for (const count of progress ? place.querySelectorAll("[data-count]") : []) {
    count.textContent = `${progress?.done} of ${progress?.planned}`;
  }
  const seconds = Number(response.headers.get("Retry-After")) || usualSeconds;
  setTimeout(() => void ask(place), seconds * 1000);
}

for (const place of document.querySelectorAll<HTMLElement>("[data-awaits]")) void ask(place);
