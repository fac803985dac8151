import { usualWorkers } from "../odds/pool.js";
import { leastFutures, mostFutures } from "../study/odds/odds-settings.js";
import { accessCommand } from "./access-commands.js";
import { type OptionValues, paper, required, UsageError, whole } from "./arguments.js";
import { check, compareCommand, demo, report, schema } from "./commands.js";
import { formsCommand } from "./forms-command.js";
import { issueCommand, verifyCommand } from "./issue-commands.js";
import {
  backupCommand,
  exportCommand,
  importCommand,
  listCommand,
  removeCommand,
  restoreCommand,
} from "./keeping-commands.js";
import { methodCommand } from "./method-command.js";
import { type OddsArguments, oddsCommand } from "./odds-command.js";
import { searchCommand } from "./search-command.js";
import { startCommand } from "./start-command.js";

const print = (text: string) => console.log(text);

/** Scripts may still ask for a report without odds: every report has its odds. */
function noteIgnored(values: OptionValues): void {
  if (values["without-odds"]) {
    console.error("--without-odds is ignored: the answer rests on the odds, which are part of every report.");
  }
}

/** Done, or found that what was asked is not so. */
type Outcome = "done" | "not so";

type Command = (
  operand: string | undefined,
  values: OptionValues,
  name: string | undefined,
) => void | Promise<void> | Promise<Outcome>;

/** The commands by their names; the operand is the word after the command, the name the one after that. */
const commands = new Map<string, Command>([
  [
    "start",
    (file, values) => {
      const out = required(values.out, "--out FILE");
      const today = new Date().toISOString().slice(0, 10);
      return startCommand({ file, out, example: values.example ?? false }, today, print);
    },
  ],
  ["check", (study) => check(required(study, "STUDY"), print)],
  ["compare", (study, { json }) => compareCommand(required(study, "STUDY"), json ?? false, print)],
  [
    "report",
    (study, values) => {
      const out = required(values.out, "--out FILE");
      noteIgnored(values);
      const part = values["board-part"] ? "board" : "all";
      return report(required(study, "STUDY"), { out, paper: paper(values.paper), part }, print);
    },
  ],
  [
    "method",
    (study, { out, paper: size }) =>
      methodCommand(study, { out: required(out, "--out FILE"), paper: paper(size) }, print),
  ],
  ["search", (study, values) => searchCommand(required(study, "STUDY"), oddsArguments(values), print)],
  ["odds", (study, values) => oddsCommand(required(study, "STUDY"), oddsArguments(values), print)],
  [
    "forms",
    (study, values) => {
      const out = required(values.out, "--out FOLDER");
      noteIgnored(values);
      return formsCommand(required(study, "STUDY"), { out }, print);
    },
  ],
  [
    "issue",
    (id, values) => {
      const { author = "", note = "" } = values;
      const out = required(values.out, "--out FILE");
      noteIgnored(values);
      return issueCommand(required(id, "STUDY-ID"), { out, author, note }, print);
    },
  ],
  ["verify", async (file) => ((await verifyCommand(required(file, "FILE"), print)) ? "done" : "not so")],
  ["schema", () => schema(print)],
  ["demo", () => demo(print)],
  ["list", () => listCommand(print)],
  ["import", (file, { author }) => importCommand(required(file, "FILE"), author ?? "", print)],
  [
    "export",
    (id, { out, revision }) => {
      const number = whole("--revision", revision, { least: 1, most: Number.MAX_SAFE_INTEGER });
      exportCommand(required(id, "STUDY-ID"), { out: required(out, "--out FILE"), revision: number }, print);
    },
  ],
  ["access", (what, { role }, name) => accessCommand(what, { name, role }, print)],
  ["backup", (file) => backupCommand(required(file, "FILE"), print)],
  ["restore", (file) => restoreCommand(required(file, "FILE"), print)],
  ["remove", (id, { permanently }) => removeCommand(required(id, "STUDY-ID"), permanently ?? false, print)],
]);

/** @throws UsageError where there is no such command */
export function commandCalled(name: string): Command {
  const command = commands.get(name);
  if (command) return command;
  throw new UsageError(`Unknown command "${name}". Allowed: ${[...commands.keys()].join(", ")}.`);
}

function oddsArguments(values: OptionValues): OddsArguments {
  return {
    futures: whole("--futures", values.futures, { least: leastFutures, most: mostFutures }),
    seed: whole("--seed", values.seed, { least: 0, most: Number.MAX_SAFE_INTEGER }),
    workers: whole("--workers", values.workers, { least: 1, most: mostWorkersAsked }) ?? usualWorkers(),
    asJson: values.json ?? false,
  };
}

const mostWorkersAsked = 64;
