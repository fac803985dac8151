import { z } from "zod";
import { type AssumptionFiles, readYaml } from "./yaml-file.js";

/** One item of a file's list of assumptions, unread. */
export interface WrittenItem {
  readonly file: string;
  readonly item: unknown;
  /** Absent where it has none that is a text. */
  readonly id: string | undefined;
  /** Place in the file's list, from 0. */
  readonly index: number;
}

/** Ids that the files hold, of entries that cannot be used too. */
export interface HeldIds {
  readonly has: (id: string) => boolean;
  readonly list: readonly string[];
  /** False where a file could not be read, or an item names no id: then nobody knows what is missing. */
  readonly areAll: boolean;
}

export interface WrittenItems {
  readonly items: readonly WrittenItem[];
  readonly ids: HeldIds;
}

const withId = z.looseObject({ id: z.string() });

/** The items of the files that list assumptions. */
export function writtenItems(
  files: AssumptionFiles,
  names: readonly string[],
  problems: string[],
): WrittenItems {
  const lists = names.map((file) => ({ file, list: listOf(files, file, problems) }));
  const items = lists.flatMap(({ file, list }) =>
    (list ?? []).map((item, index) => ({ file, item, id: withId.safeParse(item).data?.id, index })),
  );
  const isRead = lists.every(({ list }) => list !== undefined);
  return { items, ids: heldIds(items, isRead) };
}

function heldIds(items: readonly WrittenItem[], isRead: boolean): HeldIds {
  const ids = new Set(items.flatMap(({ id }) => id ?? []));
  const areAll = isRead && items.every(({ id }) => id !== undefined);
  return { has: (id) => ids.has(id), list: [...ids], areAll };
}

function listOf(files: AssumptionFiles, file: string, problems: string[]): readonly unknown[] | undefined {
  const content = readYaml(files, file, problems);
  if (content === undefined) return undefined;
  if (Array.isArray(content)) return content;
  problems.push(`${file}: holds no list of assumptions. Write each as "- { id: …, value: … }".`);
  return undefined;
}
