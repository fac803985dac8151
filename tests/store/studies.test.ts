import { describe, expect, it } from "vitest";
import { storeConnection } from "../../src/store/connection.js";
import { ConflictError, DeletedStudyError, UnknownStudyError } from "../../src/store/errors.js";
import { studyStore } from "../../src/store/studies.js";
import { folder, written } from "./places.js";

const newStore = () => studyStore(storeConnection(":memory:"));

describe("kept studies", () => {
  it("are there after closing and opening again, text unchanged", () => {
    const place = folder();
    const text = "\ufeffone\r\n\tab\u0000c 湖 😀\n\n";
    const first = storeConnection(place);
    studyStore(first).create(written(text));
    first.close();
    const second = storeConnection(place);
    expect(studyStore(second).latest("lake")).toMatchObject({ ...written(text), revision: 1 });
    second.close();
  });

  it("never merge with another of the same id: the second gets a number", () => {
    const store = newStore();
    const ids = ["one", "two", "three"].map((text) => store.create(written(text)).id);
    expect(ids).toEqual(["lake", "lake-2", "lake-3"]);
    expect(store.latest("lake")?.text).toBe("one");
  });

  it("leave the id to a deleted study, so that it can be recovered", () => {
    const store = newStore();
    store.create(written("one"));
    store.setState("lake", "deleted", "2026-02-01T00:00:00Z");
    expect(store.create(written("two")).id).toBe("lake-2");
  });
});

describe("revisions", () => {
  it("are all kept with who wrote them, when and why, the newest first", () => {
    const store = newStore();
    store.create(written("one"));
    store.save({
      ...written("two", { author: "Bo", note: "dearer divers", savedAt: "2026-01-02" }),
      expected: 1,
    });
    expect(store.revisions("lake")).toMatchObject([
      { revision: 2, author: "Bo", note: "dearer divers", savedAt: "2026-01-02" },
      { revision: 1, author: "Ada" },
    ]);
    expect(store.revision("lake", 1)?.text).toBe("one");
    expect(store.revision("lake", 3)).toBeUndefined();
  });

  it("are not made by a text that is kept already, as when an answer was lost and the saving repeated", () => {
    const store = newStore();
    store.create(written("one"));
    const change = { ...written("two"), expected: 1 };
    expect(store.save(change).revision).toBe(2);
    expect(store.save(change).revision).toBe(2);
  });

  it("are refused to the second of two writers, who is shown the first's", () => {
    const store = newStore();
    store.create(written("one"));
    store.save({ ...written("hers"), expected: 1 });
    const refused = () => store.save({ ...written("his"), expected: 1 });
    expect(refused).toThrow(ConflictError);
    expect(refused).toThrow(expect.objectContaining({ expected: 1, latest: store.latest("lake") }));
    expect(store.revisions("lake")).toHaveLength(2);
  });

  it("are refused to a study that is deleted or was never there", () => {
    const store = newStore();
    expect(() => store.save({ ...written("one"), expected: 1 })).toThrow(UnknownStudyError);
    store.create(written("one"));
    store.setState("lake", "deleted", "2026-02-01T00:00:00Z");
    expect(() => store.save({ ...written("two"), expected: 1 })).toThrow(DeletedStudyError);
  });
});

describe("states", () => {
  it("move a study between the lists, with the day", () => {
    const store = newStore();
    store.create(written("one"));
    store.create(written("other", { id: "pond", savedAt: "2026-01-05T00:00:00Z" }));
    expect(store.list("active").map(({ id }) => id)).toEqual(["pond", "lake"]);
    store.setState("lake", "archived", "2026-02-01T00:00:00Z");
    expect(store.list("active").map(({ id }) => id)).toEqual(["pond"]);
    expect(store.list("archived")).toMatchObject([{ id: "lake", stateChangedAt: "2026-02-01T00:00:00Z" }]);
    expect(store.setState("lake", "active", "2026-03-01T00:00:00Z").text).toBe("one");
    expect(() => store.setState("none", "active", "2026-03-01T00:00:00Z")).toThrow(UnknownStudyError);
  });

  it("let only a deleted study be removed for good, with all its revisions", () => {
    const store = newStore();
    store.create(written("one"));
    expect(() => store.remove("lake")).toThrow(UnknownStudyError);
    store.setState("lake", "deleted", "2026-02-01T00:00:00Z");
    store.remove("lake");
    expect(store.latest("lake")).toBeUndefined();
    expect(store.revisions("lake")).toEqual([]);
  });
});
