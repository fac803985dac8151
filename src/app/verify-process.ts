import type { Kept } from "../issue/authenticity.js";
import type { Draw } from "../issue/recompute.js";
import { verifyIssue } from "../issue/verify.js";
import { oddsOf } from "../odds/draw.js";
import { workerPool } from "../odds/pool.js";
import { drawingThreads } from "../odds/threads.js";
import { oddsSettings } from "../study/format/uncertainty-schema.js";
import type { FromProcess, ToProcess } from "./verify-messages.js";

/** Verifies one file and ends: whatever the file does to this process, the one that started it goes on. */
process.on("message", async (message: ToProcess) => {
  if (message.kind !== "file") return;
  const { pdf, withOdds } = message;
  const verification = await verifyIssue(pdf, {
    kept: (claim) => {
      send({ kind: "claim", claim });
      return keptOf();
    },
    draw: withOdds ? drawAgain : undefined,
  });
  send({ kind: "verification", verification });
  process.disconnect();
});

process.on("disconnect", () => process.exit());

const send = (message: FromProcess) => process.send?.(message);

const keptOf = (): Promise<Kept> =>
  new Promise((resolve) => {
    process.once("message", (message: ToProcess) => {
      if (message.kind === "kept") resolve(message.kept);
    });
  });

/** Few workers: each takes of the memory that the process may have. */
const drawingWorkers = 2;

const drawAgain: Draw = async (document, assumptions) => {
  const pool = workerPool(() => assumptions, drawingThreads(drawingWorkers));
  const { signal } = new AbortController();
  const settings = oddsSettings(document.study.uncertainty);
  try {
    return await oddsOf(pool, { document, settings }, { signal, onProgress: () => undefined });
  } finally {
    await pool.close();
  }
};
