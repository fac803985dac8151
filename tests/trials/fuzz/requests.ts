import fc from "fast-check";
import { stringify } from "yaml";
import { mutated, mutation } from "./mutation.js";
import { acts, assumptionIds, calls, fieldNames, ids, pages, parts, posts } from "./request-words.js";
import { smallLakes } from "./studies.js";
import { anyText, anyValue } from "./values.js";

/** A request as a browser, a program or a hostile one would send it. */
export interface WrittenRequest {
  readonly method: string;
  readonly path: string;
  readonly headers: Readonly<Record<string, string>>;
  readonly body: string | undefined;
}

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
