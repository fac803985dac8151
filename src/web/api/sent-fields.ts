import { z } from "zod";

/** What a request may send, and nothing else: a key that it does not take is told those that it does. */
export const sentFields = <Fields extends z.ZodRawShape>(fields: Fields) =>
  z.strictObject(fields, {
    error: ({ code }) => (code === "unrecognized_keys" ? allowedKeys(Object.keys(fields)) : undefined),
  });

const allowedKeys = (keys: readonly string[]): string =>
  keys.length === 0 ? "no keys here" : `only ${keys.join(", ")}`;
