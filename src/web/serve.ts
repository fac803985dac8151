import { join } from "node:path";
import { AssumptionError, loadAssumptions } from "../assumptions/load.js";
import { oddsOf } from "../odds/draw.js";
import { workerPool } from "../odds/pool.js";
import { assumptionsFolder, projectRoot } from "../report/assets.js";
import { createPrinter } from "../report/printer.js";
import { openStudyStore } from "../store/studies.js";
import { createApp } from "./app.js";
import { oddsDesk, usualDesk } from "./odds-desk.js";
import { studyShelf } from "./study-shelf.js";

const host = "127.0.0.1";
const defaultPort = 4170;

function start(): void {
  const port = Number(process.env.PORT ?? defaultPort);
  const store = openStudyStore(process.env.RAMP_AND_RACK_DATA ?? join(projectRoot, "data"));
  const printer = createPrinter();
  const assumptions = loadAssumptions(assumptionsFolder);
  const shelf = studyShelf(store, assumptions, () => new Date());
  const pool = workerPool(assumptions);
  const desk = oddsDesk({ ...usualDesk, draw: (study, control) => oddsOf(pool, study, control) });
  const server = createApp({ shelf, printer, desk, report: (error) => console.error(error) }).listen(
    port,
    host,
    (error) => {
      if (error) {
        console.error(`Cannot listen on ${host}:${port}: ${error.message}. Set PORT to a free port.`);
        process.exitCode = 1;
        return;
      }
      console.log(`Ramp & Rack is at http://${host}:${port}/ (stop with Ctrl-C)`);
    },
  );
  const stop = () => {
    server.close(() => {
      store.close();
      void printer.close();
      void pool.close();
    });
    server.closeIdleConnections();
  };
  process.once("SIGINT", stop);
  process.once("SIGTERM", stop);
}

try {
  start();
} catch (error) {
  if (!(error instanceof AssumptionError)) throw error;
  console.error(error.message);
  process.exitCode = 1;
}
