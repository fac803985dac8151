import type { Server } from "node:http";
import { pino } from "pino";
import { sharedAnswers } from "../app/answers/shared.js";
import { answerWorkers } from "../app/answers/workers.js";
import { askedRuns, usualRuns } from "../app/runs.js";
import { studiesOf } from "../app/studies.js";
import { assumptionFiles, readWhenNeeded } from "../assumptions/load.js";
import { withAgencyFile } from "../assumptions/read-agency.js";
import { signingKeyIn } from "../issue/signing-key.js";
import { fewFuturesOf, oddsOf } from "../odds/draw.js";
import { workerPool } from "../odds/pool.js";
import { searchOf } from "../odds/search.js";
import { swingsBy } from "../odds/swings-by-workers.js";
import { PlainError } from "../plain-error.js";
import { assumptionsFolder } from "../report/document/assets.js";
import { besidePages, launchBrowser } from "../report/print/browser.js";
import { createPrinter } from "../report/print/printer.js";
import { accessStore } from "../store/access.js";
import { storeConnection } from "../store/connection.js";
import { dataFolder } from "../store/data-folder.js";
import { StoreError } from "../store/errors.js";
import { issueStore } from "../store/issues.js";
import { lockForServing, type ServingLock } from "../store/serving-lock.js";
import { type StudyStore, studyStore } from "../store/studies.js";
import { tuneEngine } from "../workers/engine.js";
import { door } from "./access/door.js";
import { accessSettings, refuseOpenDoor, shownAddress } from "./access/settings.js";
import { createApp } from "./app.js";
import { stopServing, usualPatience } from "./stopping.js";
import { faultEntry, withUpkeep } from "./upkeep.js";
import { afterFirstAnswer, workAhead } from "./work-ahead.js";

function start(): void {
  tuneEngine();
  const log = pino();
  const settings = accessSettings(process.env);
  const { host, port } = settings;
  const lock = lockOrWarn(dataFolder());
  const connection = storeConnection(dataFolder());
  const store = studyStore(connection);
  warnOfFault(store);
  const keys = accessStore(connection);
  refuseOpenDoor(settings, keys);
  const files = withAgencyFile(assumptionFiles(assumptionsFolder), dataFolder());
  const assumptions = readWhenNeeded(files);
  const now = () => new Date();
  const studies = studiesOf(store, assumptions, now);
  const workers = answerWorkers(() => ({ assumptions: assumptions(), files }));
  const printer = createPrinter({
    launch: () => launchBrowser(besidePages),
    finish: async (printed, description) => workers.ask("packed", { pdf: await printed, description }),
  });
  const pool = workerPool(assumptions);
  const runs = askedRuns({ ...usualRuns, draw: (study, control) => oddsOf(pool, study, control) });
  const few = askedRuns({ ...fewRuns, draw: (study, control) => fewFuturesOf(pool, study, control) });
  const answers = sharedAnswers(workers, mostAnswerBytes);
  const ending = new AbortController();
  const app = createApp({
    studies,
    answers,
    printer,
    runs,
    few,
    search: (study, control) => searchOf(pool, study, control),
    judge: (document, signal) => swingsBy(pool, document, assumptions(), signal),
    issuing: { issues: issueStore(connection), now, key: signingKeyIn(dataFolder(), now) },
    access: { door: door(keys, now, !settings.isLocal), settings },
    report: (error) => log.error(faultEntry(error)),
  });
  const server = withUpkeep(app, { log, connection }).listen(port, host, (error) => {
    if (error) {
      console.error(`Cannot listen on ${host}:${port}: ${error.message}. Set PORT to a free port.`);
      process.exitCode = 1;
      return;
    }
    afterFirstAnswer(server, ending.signal, () => {
      workers.warm();
      const told = (fault: unknown) => log.error(faultEntry(fault));
      workAhead(studies, answers, ending.signal, told).catch(told);
    });
    console.log(`Ramp & Rack is at ${shownAddress(settings)} (stop with Ctrl-C)`);
  });
  Object.assign(server, patience);
  stopOnSignals(server, async () => {
    ending.abort();
    connection.close();
    lock?.release();
    await Promise.all([printer.close(), pool.close(), workers.close()]);
  });
}

/** Somebody who types on asks for other outcomes soon. */
const fewRuns = { ...usualRuns, patienceMilliseconds: 4000 };

/** Pages and printed reports that stay in memory. */
const mostAnswerBytes = 48 * 1024 * 1024;

function stopOnSignals(server: Server, putAway: () => Promise<void>): void {
  const stop = () => {
    void stopServing(server, { patienceMilliseconds: usualPatience, putAway });
    // What does not end by itself is ended; the database is whole at any moment.
    setTimeout(() => process.exit(1), 2 * usualPatience).unref();
  };
  process.once("SIGINT", stop);
  process.once("SIGTERM", stop);
}

/** Milliseconds that a sender may take: for the head of a request, and for all of it, at 24 MB the largest. */
const patience = { headersTimeout: 15_000, requestTimeout: 180_000 };

/** @throws StoreError where another server has the folder. One that cannot be written yet is told of and served. */
function lockOrWarn(folder: string): ServingLock | undefined {
  try {
    return lockForServing(folder);
  } catch (error) {
    if (!(error instanceof StoreError) || error.fault === "locked") throw error;
    return undefined;
  }
}

/** A database that is out of order keeps nobody from the examples, and may be mended while the server runs. */
function warnOfFault(store: StudyStore): void {
  try {
    for (const { id, revision, isDamaged } of store.list("active")) {
      if (isDamaged) console.error(`Revision ${revision} of ${id} is damaged: its page says the way out.`);
    }
  } catch (error) {
    if (!(error instanceof StoreError)) throw error;
    console.error(error.message);
  }
}

try {
  start();
} catch (error) {
  if (!(error instanceof PlainError)) throw error;
  console.error(error.message);
  process.exitCode = error.isToCorrect ? 2 : 1;
}
