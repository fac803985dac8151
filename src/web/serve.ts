import { AssumptionError, assumptionFiles, readAssumptions } from "../assumptions/load.js";
import { oddsOf } from "../odds/draw.js";
import { workerPool } from "../odds/pool.js";
import { assumptionsFolder } from "../report/assets.js";
import { createPrinter } from "../report/printer.js";
import { storeConnection } from "../store/connection.js";
import { dataFolder } from "../store/data-folder.js";
import { StoreError } from "../store/errors.js";
import { issueStore } from "../store/issues.js";
import { type StudyStore, studyStore } from "../store/studies.js";
import { createApp } from "./app.js";
import { oddsDesk, usualDesk } from "./odds-desk.js";
import { studyShelf } from "./study-shelf.js";

const host = "127.0.0.1";
const defaultPort = 4170;

function start(): void {
  const port = Number(process.env.PORT ?? defaultPort);
  const connection = storeConnection(dataFolder());
  const store = studyStore(connection);
  warnOfFault(store);
  const printer = createPrinter();
  const files = assumptionFiles(assumptionsFolder);
  const assumptions = readAssumptions(files);
  const now = () => new Date();
  const shelf = studyShelf(store, assumptions, now);
  const issuing = { issues: issueStore(connection), files, now };
  const pool = workerPool(assumptions);
  const desk = oddsDesk({ ...usualDesk, draw: (study, control) => oddsOf(pool, study, control) });
  const server = createApp({
    shelf,
    printer,
    desk,
    issuing,
    report: (error) => console.error(error),
  }).listen(port, host, (error) => {
    if (error) {
      console.error(`Cannot listen on ${host}:${port}: ${error.message}. Set PORT to a free port.`);
      process.exitCode = 1;
      return;
    }
    console.log(`Ramp & Rack is at http://${host}:${port}/ (stop with Ctrl-C)`);
  });
  const stop = () => {
    server.close(() => {
      connection.close();
      void printer.close();
      void pool.close();
    });
    server.closeIdleConnections();
  };
  process.once("SIGINT", stop);
  process.once("SIGTERM", stop);
}

/** A database that is out of order keeps nobody from the examples, and may be mended while the server runs. */
function warnOfFault(store: StudyStore): void {
  try {
    store.list("active");
  } catch (error) {
    if (!(error instanceof StoreError)) throw error;
    console.error(error.message);
  }
}

try {
  start();
} catch (error) {
  if (!(error instanceof AssumptionError)) throw error;
  console.error(error.message);
  process.exitCode = 1;
}
