import { sha256, stableJson } from "../assumptions/digest.js";

/** SHA-256 of all that an issue is made from, as JSON with sorted keys; every field of the content is in it. */
export const contentDigest = (content: object): string => sha256(stableJson(content));
