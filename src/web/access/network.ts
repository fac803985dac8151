import { isIPv6 } from "node:net";

/** Groups of an IPv6 address that its owner does not choose. */
const networkGroups = 4;

/** What is counted as one asker: an IPv4 address, or an IPv6 network, in which one machine has 2^64 addresses. */
export function networkOf(address: string): string {
  const mapped = /^::ffff:(\d+(?:\.\d+){3})$/i.exec(address)?.[1];
  if (mapped !== undefined) return mapped;
  if (!isIPv6(address)) return address;
  const [head = "", tail = ""] = address.split("::").map((part) => part.toLowerCase());
  const groupsOf = (part: string) => (part === "" ? [] : part.split(":"));
  const missing = 8 - groupsOf(head).length - groupsOf(tail).length;
  const groups = [...groupsOf(head), ...Array<string>(Math.max(0, missing)).fill("0"), ...groupsOf(tail)];
  return groups
    .slice(0, networkGroups)
    .map((group) => group.replace(/^0+(?=.)/, ""))
    .join(":");
}
