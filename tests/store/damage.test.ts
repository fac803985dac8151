import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { backUp } from "../../src/store/backup.js";
import { databaseFile, storeConnection } from "../../src/store/connection.js";
import { DamagedIssueError, DamagedRevisionError } from "../../src/store/errors.js";
import { issueStore, type KeptIssue } from "../../src/store/issues.js";
import { restore } from "../../src/store/restore.js";
import { type StudyStore, studyStore } from "../../src/store/studies.js";
import { flipBitIn, flipBitOfId } from "./harming.js";
import { folder, written } from "./places.js";

const issue: KeptIssue = {
  ...{ studyId: "lake", number: 1, issuedAt: "2026-01-02T00:00:00Z", author: "Ada", note: "for the board" },
  ...{ revision: 1, studyName: "Lake", engineVersion: "0.1.0", seed: 7, digest: "digest 1" },
  ...{
    fileName: "lake.yaml",
    studyText: "text of the issue",
    assumptions: '{"used":[]}',
    figures: '{"net":123}',
  },
  pdf: Buffer.from("%PDF-1.7 pages"),
  boardPdf: Buffer.from("%PDF-1.7, the board"),
};

/** Three revisions of a lake, one of a pond and an issued report, of which one bit is flipped. */
function harmed(...texts: readonly string[]) {
  const place = folder();
  const connection = storeConnection(place);
  const store = studyStore(connection);
  store.create(written("first text"));
  store.save({ ...written("second text", { note: "second note" }), expected: 1 });
  store.save({ ...written("third text"), expected: 2 });
  store.create(written("text of the pond", { id: "pond", name: "Pond" }));
  issueStore(connection).keep(issue);
  connection.close();
  for (const text of texts) flipBitIn(databaseFile(place), text);
  return { place, file: databaseFile(place), connection, store, issues: issueStore(connection) };
}

const revisionError = (store: StudyStore, revision?: number): DamagedRevisionError => {
  try {
    const text = revision === undefined ? store.latest("lake")?.text : store.revision("lake", revision)?.text;
    return expect.fail(`was given out: ${text}`);
  } catch (error) {
    if (error instanceof DamagedRevisionError) return error;
    throw error;
  }
};

describe("a bit flipped in a revision's text", () => {
  it("is told where it would be read, with the sound revision before it, and nowhere else", () => {
    const { store, connection } = harmed("third text");
    expect(revisionError(store)).toMatchObject({ sound: 2, isLatest: true });
    expect(revisionError(store, 3).message).toContain("ramp-and-rack export lake --revision 2 --out FILE");
    expect(store.revision("lake", 2)?.text).toBe("second text");
    expect(store.latest("pond")?.text).toBe("text of the pond");
    expect(store.list("active").map(({ id, isDamaged }) => [id, isDamaged])).toEqual([
      ["lake", true],
      ["pond", false],
    ]);
    expect(store.revisions("lake").map(({ isDamaged }) => isDamaged)).toEqual([true, false, false]);
    expect(store.card("lake")).toMatchObject({ revision: 3, isDamaged: true });
    connection.close();
  });

  it.each([
    ["two in a row", ["second text", "third text"], 1],
    ["all of them", ["first text", "second text", "third text"], undefined],
  ])("of %s leaves what is sound before", (_what, texts, sound) => {
    const { store, connection } = harmed(...texts);
    expect(revisionError(store).sound).toBe(sound);
    connection.close();
  });

  it("of an earlier one leaves the latest as it is", () => {
    const { store, connection } = harmed("second text");
    expect(store.latest("lake")?.text).toBe("third text");
    expect(revisionError(store, 2)).toMatchObject({ sound: 1, isLatest: false });
    expect(store.list("active").some(({ isDamaged }) => isDamaged)).toBe(false);
    connection.close();
  });

  it.each(["lake.yaml", "second note"])("in what stands beside it, %s, is told as well", (text) => {
    const place = folder();
    const connection = storeConnection(place);
    const store = studyStore(connection);
    store.create(written("text", { note: "second note" }));
    connection.close();
    flipBitIn(databaseFile(place), text);
    expect(revisionError(store)).toMatchObject({ sound: undefined });
    connection.close();
  });

  it("that leaves no text in UTF-8 is told", () => {
    const place = folder();
    const connection = storeConnection(place);
    const store = studyStore(connection);
    store.create(written("depth of the é"));
    connection.close();
    flipBitIn(databaseFile(place), "depth of the é");
    expect(revisionError(store).isLatest).toBe(true);
    connection.close();
  });

  it("keeps nobody from going on from a sound one, or from deleting the study", () => {
    const { store, connection } = harmed("third text");
    expect(store.save({ ...written("second text"), expected: 3 })).toMatchObject({
      revision: 4,
      isDamaged: false,
    });
    expect(store.latest("lake")?.text).toBe("second text");
    expect(store.setState("lake", "deleted", "2026-02-01T00:00:00Z").state).toBe("deleted");
    connection.close();
  });

  it("does not let a damaged text count as the one that is saved", () => {
    const { store, connection } = harmed("third text");
    // By hand: the last letter t, 0x74, becomes u, 0x75.
    expect(store.save({ ...written("third texu"), expected: 3 }).revision).toBe(4);
    connection.close();
  });
});

describe("texts with unusual characters", () => {
  it.each(["", "\u0000", "a\u0000b", "\ud800", "\ufeff湖\r\n", "\uffff"])(
    "%j are sound as they are kept",
    (text) => {
      const connection = storeConnection(":memory:");
      const store = studyStore(connection);
      store.create(written(text, { name: text || "-", note: text, author: text }));
      expect(store.card("lake")?.isDamaged).toBe(false);
      connection.close();
    },
  );
});

describe("a bit flipped in an issued report", () => {
  it.each([
    ["its PDF", "%PDF-1.7 pages", /one of its PDFs does not match/],
    ["its study", "text of the issue", /what it was made from does not match/],
    ["its figures", '{"net":123}', /what it was made from does not match/],
    ["its assumptions", '{"used":[]}', /what it was made from does not match/],
    ["its note", "for the board", /what it was made from does not match/],
  ])("in %s is told, and nothing of it is given out", (_where, text, message) => {
    const { issues, connection } = harmed(text);
    expect(() => issues.find("lake", 1)).toThrow(message);
    expect(() => issues.withDigest("digest 1")).toThrow(DamagedIssueError);
    expect(issues.damaged("lake")).toEqual([1]);
    expect(issues.list("lake")).toHaveLength(1);
    expect(issues.keep({ ...issue, number: 2, digest: "digest 2" })).toBe(true);
    expect(issues.find("lake", 2)?.figures).toBe('{"net":123}');
    expect(issues.damaged("lake")).toEqual([1]);
    connection.close();
  });
});

describe("a backup of what is damaged", () => {
  it("is made, tells what is damaged, and tells it again when it is restored", async () => {
    const { file, connection } = harmed("third text", "%PDF-1.7 pages");
    const damaged = {
      revisions: [{ id: "lake", revision: 3 }],
      issues: [{ studyId: "lake", number: 1 }],
    };
    const copy = join(folder(), "copy.sqlite");
    expect(await backUp(file, copy)).toEqual({ studies: 2, revisions: 4, damaged });
    const elsewhere = databaseFile(join(folder(), "data"));
    expect(await restore(copy, elsewhere, new Date(0))).toMatchObject({ studies: 2, damaged });
    connection.close();
  });

  it("of before brings the sound text back", async () => {
    const { file, connection, store } = harmed();
    const copy = join(folder(), "copy.sqlite");
    await backUp(file, copy);
    connection.close();
    flipBitIn(file, "third text");
    expect(revisionError(store).sound).toBe(2);
    await restore(copy, file, new Date(0));
    expect(store.latest("lake")?.text).toBe("third text");
    connection.close();
  });
});

describe("a bit flipped in an id, wherever it stands", () => {
  /** Of a study by a name that stands nowhere else, in three revisions: rows, lines and indices. */
  function ofId(place: number) {
    const folderOfIt = folder();
    const connection = storeConnection(folderOfIt);
    const store = studyStore(connection);
    const names = { id: "mirelake", name: "M", fileName: "m" };
    store.create(written("first text", names));
    store.save({ ...written("second text", names), expected: 1 });
    store.save({ ...written("third text", names), expected: 2 });
    connection.close();
    flipBitOfId(databaseFile(folderOfIt), "mirelake", place);
    return { store, connection };
  }

  // By hand: a line of the study and one of its index, three rows of revisions and three lines of theirs.
  it.each([0, 1, 2, 3, 4, 5, 6, 7])("%i, never has an older text taken for the latest", (place) => {
    const { store, connection } = ofId(place);
    expect(store.list("active")).toMatchObject([{ id: "mirelake", revision: 3, isDamaged: false }]);
    expect(store.latest("mirelake")?.text).toBe("third text");
    expect(store.revisions("mirelake").map(({ revision }) => revision)).toEqual([3, 2, 1]);
    expect(store.save({ ...written("next", { id: "mirelake" }), expected: 3 }).revision).toBe(4);
    connection.close();
  });

  it("does not stand in a ninth place", () => {
    expect(() => ofId(8)).toThrow(/does not stand there/);
  });
});
