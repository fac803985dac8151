/** Shows a page again once what it waits for is worked out. Without it a link asks again. */

for (const place of document.querySelectorAll<HTMLElement>("[data-awaits]")) {
  void fetch(place.dataset.awaits ?? "").then(({ ok }) => {
    if (ok) location.reload();
  });
}
