import type { DrawingThreads } from "../odds/threads.js";
import { assignments, type OptionValues, paper, required, UsageError, whole } from "./arguments.js";

const print = (text: string) => console.log(text);

/** Scripts may still ask for a report without odds: every report has its odds. */
function noteIgnored(values: OptionValues): void {
  if (values["without-odds"]) {
    console.error("--without-odds is ignored: the answer rests on the odds, which are part of every report.");
  }
}

/** With threads that draw, which are started before anything else is loaded. */
const withThreads = async (work: (threads: DrawingThreads) => Promise<void>): Promise<void> =>
  (await import("../odds/threads.js")).withThreads(work);

/** Done, or found that what was asked is not so. */
type Outcome = "done" | "not so";

type Command = (
  operand: string | undefined,
  values: OptionValues,
  name: string | undefined,
) => Promise<void> | Promise<Outcome>;

/**
 * The commands by their names; the operand is the word after the command, the name the one after that. Each loads what it
 * needs: all together take longer to load than a comparison to work out.
 */
const commands = new Map<string, Command>([
  [
    "start",
    async (file, values) => {
      const out = required(values.out, "--out FILE");
      const today = new Date().toISOString().slice(0, 10);
      const { startCommand } = await import("./start-command.js");
      await startCommand({ file, out, example: values.example ?? false }, today, print);
    },
  ],
  [
    "check",
    async (study) => {
      const path = required(study, "STUDY");
      (await import("./commands.js")).check(path, print);
    },
  ],
  [
    "compare",
    async (study, { json, set }) => {
      const path = required(study, "STUDY");
      const asked = { settings: assignments(set), asJson: json ?? false };
      await withThreads(async (threads) =>
        (await import("./compare-command.js")).compareCommand(path, asked, print, threads),
      );
    },
  ],
  [
    "sweep",
    async (study, { json, set }) => {
      const path = required(study, "STUDY");
      const asked = { values: assignments(set), asJson: json ?? false };
      (await import("./sweep-command.js")).sweepCommand(path, asked, print);
    },
  ],
  [
    "record",
    async (study, { set, schedule, replace, partly }, file) => {
      const path = required(study, "STUDY");
      const asked = {
        ...{ file: required(file, "FILE"), settings: assignments(set), schedule },
        ...{ replaces: replace ?? false, isPartial: partly ?? false },
      };
      (await import("./files/record-command.js")).recordCommand(path, asked, print);
    },
  ],
  [
    "log",
    async (study, { set, partly }, file) => {
      const path = required(study, "STUDY");
      const asked = { file: required(file, "FILE"), settings: assignments(set), isPartial: partly ?? false };
      (await import("./files/log-command.js")).logCommand(path, asked, print);
    },
  ],
  [
    "samples",
    async (study, { set, partly }, file) => {
      const path = required(study, "STUDY");
      const asked = { file: required(file, "FILE"), settings: assignments(set), isPartial: partly ?? false };
      (await import("./files/samples-command.js")).samplesCommand(path, asked, print);
    },
  ],
  [
    "work",
    async (study, { set, partly }, file) => {
      const path = required(study, "STUDY");
      const asked = { file: required(file, "FILE"), settings: assignments(set), isPartial: partly ?? false };
      (await import("./files/work-command.js")).workCommand(path, asked, print);
    },
  ],
  [
    "report",
    async (study, values) => {
      const out = required(values.out, "--out FILE");
      noteIgnored(values);
      const part = values["board-part"] ? "board" : "all";
      const asked = { out, paper: paper(values.paper), part } as const;
      const path = required(study, "STUDY");
      await withThreads(async (threads) =>
        (await import("./report-command.js")).report(path, asked, print, threads),
      );
    },
  ],
  [
    "method",
    async (study, { out, paper: size }) => {
      const asked = { out: required(out, "--out FILE"), paper: paper(size) };
      await (await import("./method-command.js")).methodCommand(study, asked, print);
    },
  ],
  [
    "explain",
    async (study, { part, month }) => {
      const path = required(study, "STUDY");
      (await import("./explain-command.js")).explainCommand(path, { part, month }, print);
    },
  ],
  [
    "odds",
    async (study, values) => {
      const path = required(study, "STUDY");
      const { oddsArguments, oddsCommand } = await import("./odds-command.js");
      await oddsCommand(path, oddsArguments(values), print);
    },
  ],
  [
    "search",
    async (study, values) => {
      const path = required(study, "STUDY");
      const { oddsArguments } = await import("./odds-command.js");
      await (await import("./search-command.js")).searchCommand(path, oddsArguments(values), print);
    },
  ],
  [
    "assumptions",
    async (first = "", _values, rest = "") => {
      (await import("./assumptions-command.js")).assumptionsCommand(`${first} ${rest}`.trim(), print);
    },
  ],
  [
    "own-values",
    async (study, { from, out }) => {
      const path = required(study, "STUDY");
      const asked = { from: required(from, "--from FILE"), out };
      (await import("./own-values-command.js")).ownValuesCommand(path, asked, print);
    },
  ],
  [
    "forms",
    async (study, values) => {
      const out = required(values.out, "--out FOLDER");
      noteIgnored(values);
      const path = required(study, "STUDY");
      await (await import("./forms-command.js")).formsCommand(path, { out }, print);
    },
  ],
  [
    "issue",
    async (id, values) => {
      const { author = "", note = "" } = values;
      const out = required(values.out, "--out FILE");
      noteIgnored(values);
      const study = required(id, "STUDY-ID");
      await (await import("./issue-commands.js")).issueCommand(study, { out, author, note }, print);
    },
  ],
  [
    "verify",
    async (file) => {
      const path = required(file, "FILE");
      const isSo = await (await import("./issue-commands.js")).verifyCommand(path, print);
      return isSo ? "done" : "not so";
    },
  ],
  ["schema", async () => (await import("./commands.js")).schema(print)],
  ["demo", () => withThreads(async (threads) => (await import("./report-command.js")).demo(print, threads))],
  ["list", async () => (await import("./keeping-commands.js")).listCommand(print)],
  [
    "import",
    async (file, { author }) => {
      const path = required(file, "FILE");
      await (await import("./keeping-commands.js")).importCommand(path, author ?? "", print);
    },
  ],
  [
    "export",
    async (id, { out, revision }) => {
      const number = whole("--revision", revision, { least: 1, most: Number.MAX_SAFE_INTEGER });
      const study = required(id, "STUDY-ID");
      const asked = { out: required(out, "--out FILE"), revision: number };
      (await import("./keeping-commands.js")).exportCommand(study, asked, print);
    },
  ],
  [
    "access",
    async (what, { role }, name) => {
      await (await import("./access-commands.js")).accessCommand(what, { name, role }, print);
    },
  ],
  [
    "backup",
    async (file) => {
      const path = required(file, "FILE");
      await (await import("./keeping-commands.js")).backupCommand(path, print);
    },
  ],
  [
    "restore",
    async (file) => {
      const path = required(file, "FILE");
      await (await import("./keeping-commands.js")).restoreCommand(path, print);
    },
  ],
  [
    "remove",
    async (id, { permanently }) => {
      const study = required(id, "STUDY-ID");
      await (await import("./keeping-commands.js")).removeCommand(study, permanently ?? false, print);
    },
  ],
]);

/** @throws UsageError where there is no such command */
export function commandCalled(name: string): Command {
  const command = commands.get(name);
  if (command) return command;
  throw new UsageError(`Unknown command "${name}". Allowed: ${[...commands.keys()].join(", ")}.`);
}
