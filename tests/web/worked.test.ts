import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { starting } from "./serving.js";

let web: Awaited<ReturnType<typeof starting>>;

beforeAll(async () => {
  web = await starting();
});
afterAll(() => web.close());

const pageAt = async (query: string) => web.ask(`/studies/example-ninemoss/worked${query}`);

describe("the page of what is worked by hand", () => {
  it("works any month of a structure, with the growth of its layer", async () => {
    const page = await (await pageAt("?part=village-intake&month=oct")).text();
    expect(page).toContain(
      "Month October; layer at the end of the month under the plan that its costs follow",
    );
    expect(page).toContain("What settles in the month");
    expect(page).toContain('<option value="oct" selected>October</option>');
  });

  it("begins with the first structure and the month of its thickest layer", async () => {
    const page = await (await pageAt("")).text();
    expect(page).toMatch(/<option value="village-intake" selected>/);
    expect(page).toContain("from demand to cost");
  });

  it("says what it has no sheet of, and what there is", async () => {
    const answer = await pageAt("?part=no-such-thing");
    expect(answer.status).toBe(404);
    expect(await answer.text()).toContain("Found the structure “no-such-thing”");
  });

  it("of an unfinished study says what is missing", async () => {
    const writer = { author: "", note: "", origin: "form" } as const;
    const { id } = web.studies.create("study: { name: Begun }\n", writer);
    expect((await web.ask(`/studies/${id}/worked`)).status).toBe(400);
  });
});
