import fc from "fast-check";
import { stringify } from "yaml";
import { mutated, mutation } from "./mutation.js";
import { smallLakes } from "./studies.js";
import { anyText, anyValue } from "./values.js";

/** A request as a browser, a program or a hostile one would send it. */
export interface WrittenRequest {
  readonly method: string;
  readonly path: string;
  readonly headers: Readonly<Record<string, string>>;
  readonly body: string | undefined;
}

const own = [
  "ninemoss-lake-inspection-program-request",
  "sorrel-bend-reservoir-inspection-program-request",
  "blank",
];
const ids = [...own, ...own, ...own, "example-ninemoss", "nobody", "__proto__", "%00", "..%2f..", "%E0%A4%A"];
const parts = [
  "names",
  "lake",
  "levels",
  "structures",
  "boats",
  "options",
  "money",
  "printed",
  "constructor",
];
const assumptionIds = ["cleaning.rack.visit", "growth.settlers-per-month", "toString", "money.none"];

const pages = [
  ...[
    "/",
    "/studies/new",
    "/compare",
    "/compare.json",
    "/verify",
    "/api",
    "/api/studies",
    "/api/assumptions",
    "/api/comparison",
  ],
  ...[
    "",
    "/report",
    "/results.json",
    "/study",
    "/assumptions",
    "/revisions",
    "/issues",
    "/odds",
    "/odds.json",
    "/forms",
    "/structures/table",
  ].map((end) => `/studies/ID${end}`),
  ...[
    "/edit/PART",
    "/edit/PART/N",
    "/edit/structures/N",
    "/revisions/N",
    "/revisions/N/study",
    "/assumptions/ASSUMED",
    "/structures/template/KIND.csv",
  ].map((end) => `/studies/ID${end}`),
  ...["", "/text", "/revisions", "/revisions/N", "/results", "/overrides"].map(
    (end) => `/api/studies/ID${end}`,
  ),
];

const posts = [
  ...["/studies/new", "/studies/unfinished"],
  ...[
    "/edit/PART",
    "/edit/PART/N",
    "/edit/structures/N",
    "/edit/options/N",
    "/edit/PART/new",
    "/copy",
    "/archive",
    "/delete",
    "/recover",
  ].map((end) => `/studies/ID${end}`),
  ...[
    "/revisions/N/restore",
    "/structures/table",
    "/assumptions/ASSUMED",
    "/assumptions/ASSUMED/reset",
    "/odds/cancel",
  ].map((end) => `/studies/ID${end}`),
];

const calls: readonly (readonly [string, string])[] = [
  ["POST", "/api/studies"],
  ["POST", "/api/check"],
  ["PUT", "/api/studies/ID"],
  ["PUT", "/api/studies/ID/overrides/ASSUMED"],
  ["DELETE", "/api/studies/ID/overrides/ASSUMED"],
  ["POST", "/api/studies/ID/copy"],
  ["POST", "/api/studies/ID/revisions/N/restore"],
  ["POST", "/api/studies/ID/archive"],
  ["DELETE", "/api/studies/ID"],
];

const path = (templates: readonly string[]): fc.Arbitrary<string> =>
  fc
    .record({
      template: fc.constantFrom(...templates),
      id: fc.constantFrom(...ids),
      part: fc.constantFrom(...parts),
      number: fc.constantFrom("0", "1", "2", "7", "-1", "1e9", "99999999999999999999", "x", "1.5", "%20"),
      assumed: fc.constantFrom(...assumptionIds),
      kind: fc.constantFrom("intake", "dock", "constructor"),
      query: fc.option(
        fc.array(
          fc.tuple(
            fc.constantFrom(
              "q",
              "value",
              "left",
              "right",
              "leftRevision",
              "part",
              "draft",
              "author",
              "note",
              "sort",
              "basis",
              "__proto__[x]",
            ),
            anyText,
          ),
          { maxLength: 3 },
        ),
      ),
    })
    .map(({ template, id, part, number, assumed, kind, query }) => {
      const filled = template
        .replace("ID", id)
        .replace("PART", part)
        .replace("/N", `/${number}`)
        .replace("ASSUMED", assumed)
        .replace("KIND", kind);
      const asked = new URLSearchParams(
        (query ?? []).map(([key, value]) => [key, value] as [string, string]),
      );
      return query ? `${filled}?${asked}` : filled;
    });

const fieldNames = [
  ...[
    "#base",
    "#expected",
    "#author",
    "act",
    "name",
    "lake",
    "units",
    "currency",
    "author",
    "text",
    "fileName",
    "kind",
    "csv",
    "value",
    "reason",
    "base",
    "expected",
  ],
  ...[
    "lake/name",
    "lake/chemistry/calcium",
    "lake/chemistry/calcium:unit",
    "lake/species",
    "lake/storageTable/0/area",
    "lake/surfaceTemperature/jan",
    "lake/drawdown/0/on",
  ],
  ...[
    "structures/0/name",
    "structures/0/id",
    "structures/0/rack/width",
    "structures/0/elevation",
    "structures/0/bearer",
    "structures/9/name",
    "options/1/steps/coverage",
    "options/1/name",
  ],
  ...[
    "way:lake/drawdown",
    "way:structures/0/supply",
    "money/horizon",
    "money/discountRate",
    "boats/launches/jan",
    "study/name",
    "__proto__",
    "constructor/prototype/x",
    "structures/__proto__/x",
    "lake//",
    "/",
    "",
  ],
];

const acts = [
  "add:lake/storageTable",
  "remove:lake/storageTable/0",
  "up:lake/storageTable/1",
  "down:structures/0",
  "remove:structures/0",
  "add:structures",
  "way:structures/0/supply:gravity",
  "remove:study",
  "add:__proto__",
  "open:/",
  "open://evil.example",
  "check",
  "take",
  "remove:",
  ":",
];

const field = fc.tuple(
  fc.constantFrom(...fieldNames),
  fc.oneof(
    fc.constantFrom("1", "1", "2"),
    anyText,
    fc.constantFrom(...acts),
    anyValue.map((value) => String(JSON.stringify(value))),
  ),
);

const form = fc
  .tuple(fc.boolean(), fc.array(field, { maxLength: 12 }), fc.constantFrom(...acts, ""))
  .map(([isSound, fields, act]) => {
    const head = isSound
      ? [
          ["#base", "1"],
          ["#expected", "1"],
          ["base", "1"],
          ["expected", "1"],
          ["kind", "intake"],
          ["act", act],
        ]
      : [];
    const pairs = [
      ...head,
      ...fields.filter(([name]) => !isSound || !head.some(([known]) => known === name)),
    ];
    return String(
      new URLSearchParams(pairs.map(([name = "", value = ""]) => [name, value] as [string, string])),
    );
  });

const study = fc
  .tuple(fc.constantFrom(...smallLakes()), fc.array(mutation, { maxLength: 3 }), fc.boolean())
  .map(([lake, changes, isJson]) => {
    const document = mutated(lake, changes);
    return isJson ? String(JSON.stringify(document)) : stringify(document);
  });

const json = anyValue.map((value) => String(JSON.stringify(value)));

const formType = "application/x-www-form-urlencoded";

export const requests: fc.Arbitrary<WrittenRequest> = fc.oneof(
  {
    arbitrary: path(pages).map((each) => ({ method: "GET", path: each, headers: {}, body: undefined })),
    weight: 3,
  },
  {
    arbitrary: fc.tuple(path(posts), form, fc.boolean()).map(([each, body, asJson]) => ({
      method: "POST",
      path: each,
      headers: { "Content-Type": formType, Accept: asJson ? "application/json" : "text/html" },
      body,
    })),
    weight: 5,
  },
  {
    arbitrary: fc
      .tuple(
        fc.constantFrom(...calls),
        fc.oneof(study, json, anyText),
        fc.constantFrom('"1"', '"2"', "*", "", "x"),
      )
      .chain(([[method, template], body, match]) =>
        path([template]).map((each) => ({
          method,
          path: each,
          headers: { "Content-Type": "application/json", ...(match === "" ? {} : { "If-Match": match }) },
          body: body,
        })),
      ),
    weight: 4,
  },
);
