import type { ComparedSources } from "./compared-side.js";

/** Newest revisions of a study that a list offers. */
const mostOffered = 30;

/** What may be chosen at either side: each study as it is now and, of those chosen, issued reports and earlier revisions. */
export function compareChooser(sources: ComparedSources, [left, right]: readonly [string, string]): object {
  const { studies } = sources;
  const chosen = new Set([left, right].map((reference) => reference.split("@")[0] ?? ""));
  const listed = studies.list().map(({ id, name, isExample, revision }) => ({
    label: isExample ? `${name} (invented example)` : name,
    choices: [
      { reference: id, label: isExample ? name : `${name}: the latest, revision ${revision}` },
      ...(chosen.has(id) && !isExample ? [...issuesOf(sources, id), ...revisionsOf(sources, id)] : []),
    ],
  }));
  const side = (name: "left" | "right", label: string, reference: string) => ({
    name,
    label,
    studies: listed.map((study) => ({
      ...study,
      choices: study.choices.map((choice) => ({ ...choice, isChosen: choice.reference === reference })),
    })),
  });
  return { sides: [side("left", "This study", left), side("right", "with this one", right)] };
}

function issuesOf({ issues }: ComparedSources, id: string) {
  const damaged = new Set(issues.damaged(id));
  return issues.list(id).map(({ number, issuedAt, note }) => ({
    reference: `${id}@issue-${number}`,
    label: [`issued report ${number}${damagedMark(damaged.has(number))}, ${issuedAt.slice(0, 10)}`, note]
      .filter(Boolean)
      .join(": "),
  }));
}

const damagedMark = (isDamaged: boolean) => (isDamaged ? " (damaged)" : "");

function revisionsOf({ studies }: ComparedSources, id: string) {
  return studies
    .revisions(id)
    .slice(0, mostOffered)
    .map(({ revision, savedAt, note, isDamaged }) => ({
      reference: `${id}@${revision}`,
      label: [`revision ${revision}${damagedMark(isDamaged)}, ${savedAt.slice(0, 10)}`, note]
        .filter(Boolean)
        .join(": "),
    }));
}
