/** How a command is called: each way with what it does, and an example. */
export interface Usage {
  readonly ways: ReadonlyArray<readonly [call: string, does: string]>;
  readonly example: string;
}

/** All commands, in the order of a list of them. */
export const usages: Readonly<Record<string, Usage>> = {
  start: {
    ways: [
      [
        "[SHORT] --out STUDY",
        "write a full study from a few facts, read from a short file or asked for one by one; typical values fill in the rest",
      ],
      ["--example --out SHORT", "write a short file to start from"],
    ],
    example: "start --example --out lake-short.yaml",
  },
  check: {
    ways: [["STUDY", "check that the study is complete and consistent, and list what is missing or wrong"]],
    example: "check lake.yaml",
  },
  compare: {
    ways: [
      ["STUDY [--json]", "simulate the study's outcomes, compare its options and print the result"],
      [
        "STUDY --set ID=VALUE …",
        "the same with assumptions or entries of the study changed for this run only, and what that changes",
      ],
    ],
    example: 'compare lake.yaml --set money.discountRate="2 %/yr" --set arrival.shape=1.5',
  },
  sweep: {
    ways: [
      [
        "STUDY --set ID=VALUES …",
        "compare every option at every combination of the values, all else at central values; CSV, or JSON with --json. VALUES: a,b,c (a;b;c if a value contains a comma), or a range such as 1..9 by 2 followed by its unit",
      ],
    ],
    example: 'sweep lake.yaml --set "money.discountRate=1..6 by 0.5 %/yr" > rates.csv',
  },
  record: {
    ways: [
      [
        "STUDY FILE [--set KEY=VALUE …] [--partly]",
        "read a file of lake levels as a gauge network or spreadsheet exports it; the study remembers how, so that next year's file needs no settings. KEY: date, level (columns), unit, dates, decimals, missing, several, gaugeZero, fillGapsUpTo, origin; --partly leaves out lines with faults",
      ],
      [
        "STUDY FILE --schedule ID, --replace",
        "the same for another schedule of the lake, or in place of an existing schedule",
      ],
    ],
    example: "record lake.yaml gauge.txt --set date=datetime --set level=elevation --set unit=ft --replace",
  },
  log: {
    ways: [
      [
        "STUDY FILE [--set KEY=VALUE …] [--partly]",
        "sum a log of inspected boats (one line per boat, or sums) into the study, whose chances follow from it; names and plates are not kept. KEY: date, class, setAside, fouled, screened, quickCheck, fullInspection (columns), classes, yes, no, dates, decimals, stations, origin; --partly leaves out lines with faults",
      ],
    ],
    example:
      'log lake.yaml boats.csv --set date=Date --set class=Type --set setAside=Held --set fouled=Mussels --set "classes=Day user=day-use; Slip=long-moored"',
  },
  samples: {
    ways: [
      [
        "STUDY FILE [--set KEY=VALUE …] [--partly]",
        "count samples for mussels by year: years without a find, and with at least a usual effort, go to boats.cleanPeriods, from which the chance is learned. KEY: date, result, kind, place (columns), kinds, results, all, dates, under (the option in force), watching (options that get the yearly counts), origin; --partly leaves out lines with faults",
      ],
    ],
    example:
      'samples lake.yaml tows.csv --set date=Date --set result=Result --set all=planktonTows --set "results=ND=none; Positive=mussels"',
  },
  work: {
    ways: [
      [
        "STUDY FILE [--set KEY=VALUE …] [--partly]",
        "take own values from work orders and outages: the price of an hour of work, the hours of a cleaning and how long it takes equipment out of service, with the number of orders; names are not kept. KEY: date, structure, work, order, hours, laborCost, parts, outage, energy (columns), structures, unmapped, works, all, energyUnit, dates, decimals, origin; --partly leaves out lines with faults",
      ],
    ],
    example:
      'work lake.yaml orders.csv --set date=Closed --set structure=Asset --set work=Type --set hours=Hours --set laborCost=Labor --set outage=Down --set "structures=CWI=city-intake; Shop=other" --set "works=Strainer=strainer; Trash rack=debris"',
  },
  report: {
    ways: [
      [
        "STUDY --out FILE [--paper letter|a4] [--board-part]",
        "write the report with its odds to FILE, which ends in .pdf or .html; --board-part leaves out the appendices",
      ],
    ],
    example: "report lake.yaml --out lake.pdf --paper letter",
  },
  method: {
    ways: [
      [
        "[STUDY] --out FILE [--paper letter|a4]",
        "write the method behind every report: relations, examples and sources; with STUDY, also its first intake and power plant worked step by step",
      ],
    ],
    example: "method lake.yaml --out method.pdf",
  },
  explain: {
    ways: [
      [
        "STUDY [--part ID] [--month jul]",
        "work one month of an intake or power plant by hand: growth, pipe, rack and cost under the plan that the costs assume, each step with its numbers",
      ],
    ],
    example: "explain lake.yaml --part city-intake --month jul",
  },
  odds: {
    ways: [
      [
        "STUDY [--futures N] [--seed S] [--workers K] [--json]",
        "simulate outcomes from the study's uncertain quantities and print costs and chances; uses one worker per processor, up to 4, unless K is given",
      ],
    ],
    example: "odds lake.yaml --futures 4096 --seed 7",
  },
  search: {
    ways: [
      [
        "STUDY [--workers K] [--json]",
        "find the program that fits: efficient programs, the best within limits, the next step, when to begin and when to end",
      ],
    ],
    example: "search lake.yaml --json",
  },
  assumptions: {
    ways: [["[WORDS]", "list the assumptions that have these words in their title, synonyms or note"]],
    example: 'assumptions "head loss"',
  },
  "own-values": {
    ways: [
      [
        "STUDY --from FILE [--out STUDY]",
        "show what own values for assumptions do to the answer, each alone and all together; FILE is a table of id or title, value, unit and reason (CSV), or a study whose own values are copied; --out writes the study with them",
      ],
    ],
    example: "own-values lake.yaml --from prices.csv --out lake-2.yaml",
  },
  list: { ways: [["", "list the kept studies with their ids"]], example: "list" },
  import: {
    ways: [["FILE [--author NAME]", "keep a study file exactly as it is, complete or not"]],
    example: 'import lake.yaml --author "A. Reyes"',
  },
  export: {
    ways: [
      [
        "STUDY-ID --out FILE [--revision N]",
        "write a kept study to a file: its latest revision, unless another is named",
      ],
    ],
    example: "export sorrel-bend --revision 3 --out lake.yaml",
  },
  backup: {
    ways: [["FILE", "copy everything kept to FILE; the server may be running"]],
    example: "backup kept-2026-11.sqlite",
  },
  restore: {
    ways: [["FILE", "restore everything from a backup; what was kept before is set aside"]],
    example: "restore kept-2026-11.sqlite",
  },
  remove: {
    ways: [["STUDY-ID --permanently", "remove a deleted study and all its revisions for good"]],
    example: "remove sorrel-bend --permanently",
  },
  access: {
    ways: [
      [
        "add NAME --role read|edit",
        "create an access key for NAME and print it once; once there is a key, everyone has to sign in",
      ],
      ["list", "list who has a key, and for what"],
      ["remove NAME", "revoke a key and sign its owner out"],
    ],
    example: 'access add "A. Reyes" --role edit',
  },
  forms: {
    ways: [
      [
        "STUDY --out FOLDER",
        "write the workbook, the tables as CSV, the charts, the page for a meeting and the sheet for the wall",
      ],
    ],
    example: "forms lake.yaml --out lake-forms",
  },
  issue: {
    ways: [
      [
        "STUDY-ID --out FILE.pdf [--author NAME] [--note TEXT]",
        "issue the report on a kept study: number it, sign it and keep it unchanged",
      ],
    ],
    example: 'issue sorrel-bend --out issue-1.pdf --note "For the May meeting"',
  },
  verify: {
    ways: [
      [
        "FILE.pdf",
        "check whether a PDF was issued here, by whom, whether it is unaltered, and whether its figures match",
      ],
    ],
    example: "verify issue-1.pdf",
  },
  schema: { ways: [["", "print the JSON Schema of a study"]], example: "schema > study.schema.json" },
  demo: {
    ways: [["", "compare the options of the first example and write its report as a PDF"]],
    example: "demo",
  },
};
