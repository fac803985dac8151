import { describe, expect, it } from "vitest";
import { serving } from "./serving.js";

describe("a form that is no longer made", () => {
  it("names what to use in place of the slides, and is in no list", async () => {
    const { ask } = await serving();
    const forms = "/studies/example-ninemoss/forms";
    const response = await ask(`${forms}/slides.html`, { headers: { accept: "text/html" } });
    expect(response.status).toBe(410);
    const page = await response.text();
    expect(page).toContain("Slides are no longer made");
    expect(page).toContain(`href="${forms}/summary.html"`);
    expect(await (await ask(`${forms}.json`)).text()).not.toMatch(/slides/i);
    expect((await ask(`${forms}/other.html`)).status).toBe(404);
  });
});
