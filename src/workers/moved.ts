import { move, transferableSymbol, valueSymbol } from "piscina";

/** A worker's answer whose bytes go to the thread that asked, rather than a copy of them. */
export function moved<Answer extends object>(answer: Answer, buffers: readonly ArrayBufferLike[]): Answer {
  const transferred = buffers.filter((buffer) => buffer instanceof ArrayBuffer);
  return move({ [transferableSymbol]: transferred, [valueSymbol]: answer }) as Answer;
}
