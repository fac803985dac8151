import type { DrawControl, Progress } from "../odds/ask-each.js";
import type { EarlyFigures } from "../study/odds/early-figures.js";

/** Too many runs wait already. */
export class BusyError extends Error {}

/** How far a run is: its progress, or the runs that come first. */
export type RunState =
  | { readonly state: "drawing"; readonly progress: Progress; readonly early?: EarlyFigures }
  | { readonly state: "waiting"; readonly before: number };

/**
 * Long runs, one at a time, that end when nobody asks for them any more. One that gives way waits until all have their
 * first figures.
 */
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
  /** Goes on with it where it gave way. */
  goOn?: (() => void) | undefined;
}

export function runQueue({ patienceMilliseconds, mostWaiting }: QueueSettings): RunQueue {
  const runs: Run[] = [];
  let underWay: Run | undefined;
  const next = () => {
    if (underWay && runs.includes(underWay)) return;
    underWay = runs.find(({ progress }) => !progress) ?? runs[0];
    if (underWay?.progress) goOn(underWay);
    else if (underWay) begin(underWay);
  };
  const begin = (run: Run) => {
    run.progress = { done: 0, planned: 0 };
    const control = {
      signal: run.control.signal,
      onProgress: (progress: Progress) => {
        run.progress = progress;
      },
      onEarly: (early: EarlyFigures) => {
        run.early = early;
      },
      giveWay: () => givenWay(run),
    };
    void run.work(control).finally(() => remove(run));
  };
  const givenWay = async (run: Run): Promise<void> => {
    if (underWay !== run) return;
    await new Promise<void>((resolve) => {
      run.goOn = resolve;
      underWay = undefined;
      next();
    });
  };
  const remove = (run: Run) => {
    clearTimeout(run.patience);
    const place = runs.indexOf(run);
    if (place >= 0) runs.splice(place, 1);
    next();
  };
  const find = (key: string) => runs.find((run) => run.key === key);
  const cancel = (key: string) => {
    const run = find(key);
    if (!run) return;
    run.control.abort(new Error("nobody waits for this run any more"));
    goOn(run);
    remove(run);
  };
  const linedUp = (key: string, work: Run["work"]): Run => {
    if (runs.length > mostWaiting) throw new BusyError();
    const patience = setTimeout(() => cancel(key), patienceMilliseconds).unref();
    const run: Run = { key, work, control: new AbortController(), patience };
    runs.push(run);
    next();
    return run;
  };
  return {
    cancel,
    join: (key, work) => {
      const run = find(key) ?? linedUp(key, work);
      run.patience.refresh();
      const { progress, early } = run;
      if (!progress) return { state: "waiting", before: before(run, runs) };
      return { state: "drawing", progress, ...(early && { early }) };
    },
  };
}

/** How many come before one that waits: not those that gave way, which go on after it. */
const before = (run: Run, runs: readonly Run[]): number =>
  runs.slice(0, runs.indexOf(run)).filter(({ goOn }) => !goOn).length;

function goOn(run: Run): void {
  const { goOn: resume } = run;
  run.goOn = undefined;
  resume?.();
}
