/** Names of which each is there once: "Town water intake", "Town water intake 2". */
export function freeNames(wanted: readonly string[]): string[] {
  const taken = new Set<string>();
  return wanted.map((name) => {
    let free = name;
    for (let count = 2; taken.has(free); count += 1) free = `${name} ${count}`;
    taken.add(free);
    return free;
  });
}
