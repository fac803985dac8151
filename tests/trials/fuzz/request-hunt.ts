import { type Fault, longestMilliseconds, processorMilliseconds } from "./fault.js";
import type { Hunt, Verdict } from "./hunt.js";
import { requests, type WrittenRequest } from "./requests.js";
import { type Served, served } from "./served.js";

/** Requests to the application, a new one for each batch. */
export function requestHunt(): Hunt<WrittenRequest> {
  let application: Promise<Served> | undefined;
  const close = async () => {
    await (await application)?.close();
    application = undefined;
  };
  return {
    name: "requests",
    cases: requests,
    judge: async (request) => {
      application ??= served();
      return judgeRequest(request, await application);
    },
    endBatch: close,
  };
}

async function judgeRequest(request: WrittenRequest, { base, reported }: Served): Promise<Verdict> {
  const start = processorMilliseconds();
  const { method, headers, body } = request;
  const answer = await fetch(base + request.path, {
    method,
    headers,
    redirect: "manual",
    ...(body === undefined ? {} : { body }),
    signal: AbortSignal.timeout(60_000),
  });
  const text = await answer.text();
  const milliseconds = processorMilliseconds() - start;
  const faults: Fault[] = reported.splice(0).map((error) => ({ what: "crash", detail: stackOf(error) }));
  if (answer.status >= 500 && faults.length === 0 && !isPolite(answer)) {
    faults.push({ what: `status ${answer.status}`, detail: text.slice(0, 300) });
  }
  const isRefused = answer.status >= 400;
  if (isRefused && text.trim() === "")
    faults.push({ what: `status ${answer.status} without a word`, detail: request.path });
  const wrong = />\s*-?[$€]?(NaN|Infinity|undefined)\b|\[object /.exec(text)?.[0];
  if (wrong !== undefined) faults.push({ what: "not finite in a page", detail: `${request.path}: ${wrong}` });
  if (milliseconds > longestMilliseconds)
    faults.push({ what: "slow", detail: `${request.path}: ${milliseconds.toFixed(0)} ms` });
  return { faults, milliseconds, ending: String(answer.status) };
}

const isPolite = (answer: Response): boolean => answer.status === 503 && answer.headers.has("Retry-After");

const stackOf = (error: unknown): string =>
  error instanceof Error ? (error.stack ?? error.message).split("\n").slice(0, 5).join(" | ") : String(error);
