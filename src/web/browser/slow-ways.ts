/** Says that something which takes some seconds is under way. Without it the browser alone shows that it loads. */

const told = () => document.getElementById("slow-state");
/** A file that opens beside the page leaves the page as it was. */
const longest = 20_000;

function tell(words: string | undefined): void {
  const place = told();
  if (!place || words === undefined) return;
  place.textContent = words;
  setTimeout(() => {
    if (place.textContent === words) place.textContent = "";
  }, longest);
}

document.addEventListener("click", ({ target }) => {
  const link = target instanceof Element ? target.closest<HTMLElement>("a[data-slow]") : null;
  tell(link?.dataset.slow);
});
document.addEventListener("submit", ({ target }) => {
  if (target instanceof HTMLFormElement) tell(target.dataset.slow);
});
window.addEventListener("pageshow", () => {
  const place = told();
  if (place) place.textContent = "";
});

export {};
