import type { DrawControl, Progress } from "../odds/ask-each.js";
import type { EarlyFigures } from "../study/odds/early-figures.js";

/** Too many runs wait already. */
export class BusyError extends Error {}

/** How far a run is: its progress, or the runs that come first. */
export type RunState =
  | { readonly state: "drawing"; readonly progress: Progress; readonly early?: EarlyFigures }
  | { readonly state: "waiting"; readonly before: number };

/** Long runs, one after another, that end when nobody asks for them any more. */
interface RunQueue {
  /**
   * Joins the run of a key, or lines it up.
   * @param work deals with its own errors
   * @throws BusyError where as many wait as may
   */
  readonly join: (key: string, work: (control: DrawControl) => Promise<void>) => RunState;
  readonly cancel: (key: string) => void;
}

export interface QueueSettings {
  /** Ends a run for which nobody has asked for so long. */
  readonly patienceMilliseconds: number;
  /** Runs that may wait beside the one that is under way. */
  readonly mostWaiting: number;
}

interface Run {
  readonly key: string;
  readonly work: (control: DrawControl) => Promise<void>;
  readonly control: AbortController;
  readonly patience: NodeJS.Timeout;
  /** Absent while it waits. */
  progress?: Progress;
  /** What the draws so far say. */
  early?: EarlyFigures;
}

export function runQueue({ patienceMilliseconds, mostWaiting }: QueueSettings): RunQueue {
  const runs: Run[] = [];
  const startFirst = () => {
    const [first] = runs;
    if (!first || first.progress) return;
    const onProgress = (progress: Progress) => {
      first.progress = progress;
    };
    const onEarly = (early: EarlyFigures) => {
      first.early = early;
    };
    onProgress({ done: 0, planned: 0 });
    void first.work({ signal: first.control.signal, onProgress, onEarly }).finally(() => remove(first));
  };
  const remove = (run: Run) => {
    clearTimeout(run.patience);
    const place = runs.indexOf(run);
    if (place >= 0) runs.splice(place, 1);
    startFirst();
  };
  const find = (key: string) => runs.find((run) => run.key === key);
  const cancel = (key: string) => {
    const run = find(key);
    if (!run) return;
    run.control.abort(new Error("nobody waits for this run any more"));
    remove(run);
  };
  const linedUp = (key: string, work: Run["work"]): Run => {
    if (runs.length > mostWaiting) throw new BusyError();
    const patience = setTimeout(() => cancel(key), patienceMilliseconds).unref();
    const run: Run = { key, work, control: new AbortController(), patience };
    runs.push(run);
    startFirst();
    return run;
  };
  return {
    cancel,
    join: (key, work) => {
      const run = find(key) ?? linedUp(key, work);
      run.patience.refresh();
      const { progress, early } = run;
      if (!progress) return { state: "waiting", before: runs.indexOf(run) };
      return { state: "drawing", progress, ...(early && { early }) };
    },
  };
}
