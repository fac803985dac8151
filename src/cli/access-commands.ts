import { newAccessKey } from "../app/keys.js";
import { type AccessRole, type AccessStore, accessStore } from "../store/access.js";
import { storeConnection } from "../store/connection.js";
import { dataFolder } from "../store/data-folder.js";
import { codeOf } from "../study/reading/characters.js";
import { InputError } from "../study/reading/problems.js";
import { required, UsageError } from "./arguments.js";

type Print = (text: string) => void;

interface AccessArguments {
  readonly name: string | undefined;
  readonly role: string | undefined;
}

const longestName = 100;

/** Who may come in: adds, lists and removes access keys, also while the server runs. */
export async function accessCommand(
  what: string | undefined,
  { name, role }: AccessArguments,
  print: Print,
): Promise<void> {
  const connection = storeConnection(dataFolder());
  try {
    const store = accessStore(connection);
    if (what === "add") await addKey(store, nameIn(name), roleIn(role), print);
    else if (what === "list") listKeys(store, print);
    else if (what === "remove") removeKey(store, nameIn(name), print);
    else
      throw new UsageError(
        `access needs a word after it; found "${what ?? ""}"; allowed: add, list, remove.`,
      );
  } finally {
    connection.close();
  }
}

async function addKey(store: AccessStore, name: string, role: AccessRole, print: Print): Promise<void> {
  const { key, kept } = await newAccessKey(name, role, new Date());
  if (!store.add(kept)) {
    const remedy = `Revoke the old key first: ramp-and-rack access remove "${name}".`;
    throw refusal("NAME", `"${name}", who has a key`, "a name without a key", remedy);
  }
  print(`Access key of ${name}, to ${role}. It is shown only this once and is not stored:`);
  print(key);
}

function listKeys(store: AccessStore, print: Print): void {
  const keys = store.list();
  if (keys.length === 0)
    print("No access keys are set: anyone who uses this machine can read and change everything.");
  for (const { name, role, addedAt } of keys) print(`${role}  since ${addedAt.slice(0, 10)}  ${name}`);
}

function removeKey(store: AccessStore, name: string, print: Print): void {
  if (!store.remove(name)) {
    const names = store.list().map((key) => key.name);
    const allowed = names.length > 0 ? names.join(", ") : "none: no key is set";
    throw refusal("NAME", `"${name}"`, allowed, "The list of names: ramp-and-rack access list.");
  }
  print(`The key of ${name} no longer opens anything.`);
  if (!store.hasKeys())
    print("It was the last one: anyone who uses this machine can now read and change everything.");
}

/** Stands beside what its owner saves, so no control characters. @throws UsageError */
function nameIn(text: string | undefined): string {
  const name = required(text, "NAME").trim();
  if (name !== "" && name.length <= longestName && !/\p{C}/u.test(name)) return name;
  throw new UsageError(`NAME is ${shown(name)}; allowed: 1 to ${longestName} letters.`);
}

/** A name with the codes of its characters that nobody sees. */
const shown = (name: string): string =>
  `"${Array.from(name, (each) => (/\p{C}/u.test(each) ? codeOf(each) : each)).join("")}"`;

/** @throws UsageError */
function roleIn(text: string | undefined): AccessRole {
  if (text === "read" || text === "edit") return text;
  throw new UsageError(`--role is "${text ?? ""}"; allowed: read or edit.`);
}

const refusal = (path: string, found: string, allowed: string, remedy: string) =>
  new InputError("the command", [{ path, found, allowed, remedy }]);
