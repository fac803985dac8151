import { pairsOf } from "./pairs.js";

/**
 * A mixture of two documents: right values at the places that `takesRight` accepts, left values elsewhere. Places are
 * those of the differences; a mixture may contradict itself.
 */
export function mixture<T>(left: T, right: T, takesRight: (place: string) => boolean): T;
export function mixture(left: unknown, right: unknown, takesRight: (place: string) => boolean): unknown {
  return mixed(left, right, [], takesRight);
}

function mixed(
  left: unknown,
  right: unknown,
  names: readonly string[],
  takesRight: (place: string) => boolean,
): unknown {
  const pairs = pairsOf(left, right);
  if (!pairs) return takesRight(names.join("/")) ? right : left;
  const chosen = pairs
    .map((pair) => [pair.key, mixed(pair.left, pair.right, [...names, pair.key], takesRight)] as const)
    .filter(([, value]) => value !== undefined);
  return Array.isArray(left) ? chosen.map(([, value]) => value) : Object.fromEntries(chosen);
}
