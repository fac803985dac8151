import { parseArgs } from "node:util";
import { type Growth, growthOf, isSteep } from "./growth/measure.js";
import { allReaders } from "./growth/readers.js";
import { adversaries } from "./growth/texts.js";

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

console.log(["reader".padEnd(36), "text".padEnd(30), "   length", "       ms", "t(n)/t(n/2)"].join(" "));
let steep = 0;
for (const reader of allReaders().filter(({ name }) => name.includes(values.only))) {
  let slowest = 0;
  for (const adversary of adversaries) {
    const growth = growthOf(reader, adversary, Number(values.most));
    slowest = Math.max(slowest, growth.milliseconds);
    const isTold = isSteep(growth) || growth.milliseconds >= Number(values.least);
    if (isTold) console.log(`${line(growth)}${isSteep(growth) ? "  grows too fast" : ""}`);
    if (isSteep(growth)) steep += 1;
  }
  console.log(`${reader.name}: at most ${slowest.toFixed(1)} ms over ${adversaries.length} texts`);
}
console.log(steep === 0 ? "No reader grows faster than its text." : `${steep} pairs grow too fast.`);
process.exitCode = steep === 0 ? 0 : 1;
