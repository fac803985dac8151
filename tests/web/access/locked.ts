import { newAccessKey } from "../../../src/app/keys.js";
import { type AccessRole, accessStore } from "../../../src/store/access.js";
import { serving } from "../serving.js";

/** So that tests do not wait for what makes guessing slow. */
const quick = { cost: 2, blockSize: 1, parallelization: 1 };

/**
 * An application that asks for keys, of which Ada has one for editing and Ben one for reading.
 * @param wait before a wrong key is answered
 */
export async function locked(
  environment = {},
  wait = (_milliseconds: number): Promise<unknown> => Promise.resolve(),
) {
  const served = await serving(":memory:", environment, { wait });
  const store = accessStore(served.connection);
  const add = async (name: string, role: AccessRole) => {
    const { key, kept } = await newAccessKey(name, role, new Date(0), quick);
    store.add(kept);
    return key;
  };
  const keys = { ada: await add("Ada", "edit"), ben: await add("Ben", "read") };
  const signIn = (name: string, key: string, next = "/") =>
    served.ask("/sign-in", { method: "POST", body: new URLSearchParams({ name, key, next }) });
  const cookieOf = (response: Response) => response.headers.getSetCookie()[0]?.split(";")[0] ?? "";
  return {
    ...served,
    store,
    keys,
    signIn,
    cookieOf,
    in: async (name: string, key: string) => cookieOf(await signIn(name, key)),
  };
}
