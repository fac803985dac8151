/** How a command is called: each way with what it does, and an example. */
interface Usage {
  readonly ways: ReadonlyArray<readonly [call: string, does: string]>;
  readonly example: string;
}

/** Columns of the calls beside what they do. */
const callWidth = 32;

const usages: Readonly<Record<string, Usage>> = {
  start: {
    ways: [
      [
        "[SHORT] --out STUDY",
        "write a full study from a few facts: of a short file, or as asked; typical values stand for the rest",
      ],
      ["--example --out SHORT", "write a short file to begin with"],
    ],
    example: "start --example --out lake-short.yaml",
  },
  check: { ways: [["STUDY", "is the study complete and consistent?"]], example: "check lake.yaml" },
  compare: {
    ways: [
      ["STUDY [--json]", "draw the study's futures, compute the comparison and print it"],
      [
        "STUDY --set ID=VALUE …",
        "the same with assumptions or places of the study set for this once, and what that changes",
      ],
    ],
    example: 'compare lake.yaml --set money.discountRate="2 %/yr" --set arrival.shape=1.5',
  },
  sweep: {
    ways: [
      [
        "STUDY --set ID=VALUES …",
        "every option at every combination of the values, at central values: as CSV, or as JSON with --json. VALUES: a,b,c (a;b;c where a value holds a comma), or 1..9 by 2 with a unit after it",
      ],
    ],
    example: 'sweep lake.yaml --set "money.discountRate=1..6 by 0.5 %/yr" > rates.csv',
  },
  report: {
    ways: [
      [
        "STUDY --out FILE [--paper letter|a4] [--board-part]",
        "write the report with the odds of its futures, FILE ending in .pdf or .html; the board's part is without appendices",
      ],
    ],
    example: "report lake.yaml --out lake.pdf --paper letter",
  },
  method: {
    ways: [
      [
        "[STUDY] --out FILE [--paper letter|a4]",
        "write the method behind every report: relations, examples, sources; with a STUDY, its intake and plant worked step by step as well",
      ],
    ],
    example: "method lake.yaml --out method.pdf",
  },
  odds: {
    ways: [
      [
        "STUDY [--futures N] [--seed S] [--workers K] [--json]",
        "draw the study's uncertain quantities: costs as they come about and chances; as many workers as the machine has processors, at most 4, unless K is given",
      ],
    ],
    example: "odds lake.yaml --futures 4096 --seed 7",
  },
  search: {
    ways: [
      [
        "STUDY [--workers K] [--json]",
        "the program that fits: efficient programs, the best within limits, the next step, when to begin and to end",
      ],
    ],
    example: "search lake.yaml --json",
  },
  list: { ways: [["", "the kept studies with their ids"]], example: "list" },
  import: {
    ways: [["FILE [--author NAME]", "keep a study file, to the byte, complete or not"]],
    example: 'import lake.yaml --author "A. Reyes"',
  },
  export: {
    ways: [
      [
        "STUDY-ID --out FILE [--revision N]",
        "write a kept study's file, of its latest revision unless another is named",
      ],
    ],
    example: "export sorrel-bend --revision 3 --out lake.yaml",
  },
  backup: {
    ways: [["FILE", "copy all that is kept to FILE, also while the server runs"]],
    example: "backup kept-2026-11.sqlite",
  },
  restore: {
    ways: [["FILE", "put that content back; what was kept until then is set aside"]],
    example: "restore kept-2026-11.sqlite",
  },
  remove: {
    ways: [["STUDY-ID --permanently", "remove a deleted study with all its revisions"]],
    example: "remove sorrel-bend --permanently",
  },
  access: {
    ways: [
      [
        "add NAME --role read|edit",
        "make an access key for NAME and print it once; with any key set, everyone signs in",
      ],
      ["list", "who has a key, and for what"],
      ["remove NAME", "take a key back and sign its owner out"],
    ],
    example: 'access add "A. Reyes" --role edit',
  },
  forms: {
    ways: [["STUDY --out FOLDER", "workbook, tables as CSV, charts, pages for a meeting and for the wall"]],
    example: "forms lake.yaml --out lake-forms",
  },
  issue: {
    ways: [
      [
        "STUDY-ID --out FILE.pdf [--author NAME] [--note TEXT]",
        "freeze the report on a kept study as its next issue",
      ],
    ],
    example: 'issue sorrel-bend --out issue-1.pdf --note "For the May meeting"',
  },
  verify: {
    ways: [["FILE.pdf", "was it issued, by whom, is it unaltered, do its figures match?"]],
    example: "verify issue-1.pdf",
  },
  schema: { ways: [["", "print the JSON Schema of a study"]], example: "schema > study.schema.json" },
  demo: { ways: [["", "the first example: comparison, and report as PDF"]], example: "demo" },
};

const notes = `STUDY is a YAML or JSON file. Studies are kept in the folder that RAMP_AND_RACK_DATA names, or else in data. Exit code 0: done; 1: a fault of the machine; 2: something to correct.`;

/** Each call on lines of its own, what it does beside or below it. */
const waysOf = (command: string, { ways }: Usage): string[] =>
  ways.map(([call, does]) => {
    const text = `  ${`ramp-and-rack ${command} ${call}`.trimEnd()}`;
    const indent = " ".repeat(callWidth + 16);
    const gap = text.length + 2 > indent.length ? `\n${indent}` : " ".repeat(indent.length - text.length);
    return `${text}${gap}${wrapped(does, lineWidth - indent.length).join(`\n${indent}`)}`;
  });

const lineWidth = 118;

function wrapped(text: string, width: number): string[] {
  const lines = [""];
  for (const word of text.split(" ")) {
    const line = lines.at(-1) ?? "";
    if (line.length + 1 + word.length > width) lines.push(word);
    else lines[lines.length - 1] = line === "" ? word : `${line} ${word}`;
  }
  return lines;
}

export const usage = [
  "Usage:",
  ...Object.entries(usages).flatMap(([command, each]) => waysOf(command, each)),
  "",
  "ramp-and-rack COMMAND --help shows an example.",
  notes,
].join("\n");

/** A command's own usage and an example; undefined where there is no such command. */
export function helpOn(command: string | undefined): string | undefined {
  const found = command !== undefined && Object.hasOwn(usages, command) ? usages[command] : undefined;
  if (command === undefined || !found) return undefined;
  const lines = waysOf(command, found);
  return ["Usage:", ...lines, "", "Example:", `  ramp-and-rack ${found.example}`, "", notes].join("\n");
}
