import { parseArgs } from "node:util";
import { type Growth, growthOf, isSteep, type Reader } from "./growth/measure.js";
import { allReaders } from "./growth/readers.js";
import { type Adversary, adversaries } from "./growth/texts.js";

const { values } = parseArgs({
  options: {
    most: { type: "string", default: String(1024 * 1024) },
    only: { type: "string", default: "" },
    least: { type: "string", default: "25" },
  },
});

const line = ({ reader, text, length, milliseconds, ratio }: Growth) =>
  [
    reader.padEnd(36),
    text.padEnd(30),
    String(length).padStart(9),
    milliseconds.toFixed(1).padStart(9),
    (ratio?.toFixed(2) ?? "").padStart(6),
  ].join(" ");

/** What else a machine does can make a text look steep for seconds, and never each time. */
const sittings = 3;

/** Steep pairs, measured again once all others are done. */
const doubted: (readonly [Reader, Adversary])[] = [];

function staysSteep(reader: Reader, adversary: Adversary): boolean {
  for (let sitting = 0; sitting < sittings; sitting += 1) {
    const growth = growthOf(reader, adversary, Number(values.most));
    if (!isSteep(growth)) {
      console.log(`${line(growth)}  not this time`);
      return false;
    }
  }
  console.log(`${reader.name}: ${adversary.name} grows too fast`);
  return true;
}

console.log(["reader".padEnd(36), "text".padEnd(30), "   length", "       ms", "t(n)/t(n/2)"].join(" "));
for (const reader of allReaders().filter(({ name }) => name.includes(values.only))) {
  let slowest = 0;
  for (const adversary of adversaries) {
    const growth = growthOf(reader, adversary, Number(values.most));
    slowest = Math.max(slowest, growth.milliseconds);
    if (isSteep(growth)) doubted.push([reader, adversary]);
    if (isSteep(growth) || growth.milliseconds >= Number(values.least)) console.log(line(growth));
  }
  console.log(`${reader.name}: at most ${slowest.toFixed(1)} ms over ${adversaries.length} texts`);
}
const steep = doubted.filter(([reader, adversary]) => staysSteep(reader, adversary)).length;
console.log(steep === 0 ? "No reader grows faster than its text." : `${steep} pairs grow too fast.`);
process.exitCode = steep === 0 ? 0 : 1;
