import type { Page } from "puppeteer";
import { expect } from "vitest";
import { act, fill, months, press, text } from "./bench.js";
import { allSaved, leads } from "./waiting.js";

type Open = (path: string) => Promise<void>;

/** Fills in a study of Blue Lake, all values invented, page after page, the first of which is open. */
export async function fillBlueLake(page: Page, open: Open): Promise<void> {
  await names(page);
  expect(await text(page, "#balance")).toContain("No balance yet");
  for (const part of [money, lake, levels, structures, boats, options, requested]) await part(page, open);
}

async function names(page: Page): Promise<void> {
  await fill(page, {
    "study/authority": "Blue Lake District",
    "study/board": "Board of Directors",
    "study/preparedBy": "Ada",
  });
  await allSaved(page);
}

async function money(page: Page, open: Open): Promise<void> {
  await open("/edit/money");
  await fill(page, {
    ...{ "money/priceYear": "2025", "money/startYear": "2027", "money/horizon": "30" },
    ...{ "money/discountRate": "3", "money/discountRateOrigin": "board policy" },
  });
  await act(page, "add:money/bearers");
  await fill(page, { "money/bearers/0/id": "district", "money/bearers/0/name": "The district" });
  await allSaved(page);
  await page.reload();
  await fill(page, { "money/programBearer": "district" });
  await allSaved(page);
}

async function lake(page: Page, open: Open): Promise<void> {
  await open("/edit/lake");
  await fill(page, {
    ...{ "lake/species": "quagga", "lake/depthType": "shallow", "lake/chemistry/calcium": "32" },
    ...{ "lake/thermoclineDepth": "30" },
    ...months("lake/surfaceTemperature", "58"),
    ...months("lake/deepTemperature", "46"),
    ...months("lake/airTemperature", "50"),
    ...months("lake/humidity", "60"),
  });
  await allSaved(page);
}

async function levels(page: Page, open: Open): Promise<void> {
  await open("/edit/levels");
  await fill(page, { "lake/maximumElevation": "1,240", "lake/minimumElevation": "1,220" });
  await act(page, "add:lake/storageTable");
  await act(page, "add:lake/storageTable");
  await fill(page, {
    ...{ "lake/storageTable/0/elevation": "1,200", "lake/storageTable/0/area": "300" },
    ...{ "lake/storageTable/0/storage": "4,000", "lake/storageTable/1/elevation": "1,240" },
    ...{ "lake/storageTable/1/area": "900", "lake/storageTable/1/storage": "26,000" },
  });
  await allSaved(page);
  await leads(page, () => fill(page, { "way:lake/drawdown": "0" }));
  await fill(page, { "lake/drawdown/0/on": "06-01", "lake/drawdown/0/elevation": "1,238" });
  await allSaved(page);
  expect(await text(page, "#levels figcaption")).toContain("1,238 ft");
}

async function structures(page: Page, open: Open): Promise<void> {
  await open("/edit/structures");
  await fill(page, { kind: "dock", name: "Marina dock" });
  await press(page, 'form[action$="/new"] button');
  await fill(page, {
    ...{ "structures/0/bearer": "district", "structures/0/count": "2", "structures/0/floating": "true" },
    ...{
      "structures/0/depth": "2",
      "structures/0/wettedArea": "3,000",
      "structures/0/replacementCost": "90,000",
    },
  });
  await allSaved(page);
}

async function boats(page: Page, open: Open): Promise<void> {
  await open("/edit/boats");
  await fill(page, months("boats/launches", "120"));
  await act(page, "add:boats/classes");
  await fill(page, {
    ...{ "boats/classes/0/name": "All boats", "boats/classes/0/share": "100" },
    ...{ "boats/classes/0/fouled": "0.5", "boats/classes/0/origin": "county survey" },
  });
  await allSaved(page);
}

async function options(page: Page, open: Open): Promise<void> {
  await open("/edit/options");
  await fill(page, { name: "Summer checks" });
  await press(page, 'form[action$="/new"] button');
  await act(page, "add:options/1/steps");
  await fill(page, {
    ...{ "options/1/steps/coverage": "80", "options/1/steps/declaration": "40" },
    ...{ "options/1/steps/quickCheck": "80", "options/1/steps/inspection": "80" },
    ...{ "options/1/steps/hotWash": "85", "options/1/steps/deterrence": "10" },
    ...{ "options/1/steps/origin": "judged" },
  });
  await act(page, "add:options/1/staff");
  await fill(page, {
    ...{ "options/1/staff/0/name": "Inspectors", "options/1/staff/0/hoursPerYear": "900" },
    ...{ "options/1/staff/0/wage": "22", "options/1/staff/0/loading": "30" },
  });
  await allSaved(page);
}

async function requested(page: Page, open: Open): Promise<void> {
  await open("/edit/names");
  await fill(page, { "study/requestedOption": "summer-checks" });
  await allSaved(page);
}
