import type { Matters, TornadoBar } from "../study/odds.js";
import { hydrologicYearId } from "../study/uncertain-inputs.js";
import { type InputReading, inputText } from "./input-text.js";

/** How far the ends in the sentences reach. */
export const endsNote =
  "One value in ten is expected below a low end and one in ten above a high end. Everything else stays as the study has it.";

/** What the widest bars mean for the decision, a sentence each; of bars that move the same input only the widest. */
export function mattersSentences(
  { tornado }: Pick<Matters, "tornado">,
  count: number,
  reading: InputReading,
): string[] {
  const told = new Set<string>();
  const chosen = tornado.filter((bar) => {
    const ids = bar.members ?? [bar.id];
    if (ids.some((id) => told.has(id))) return false;
    for (const id of ids) told.add(id);
    return true;
  });
  return chosen.slice(0, count).map((bar) => sentence(bar, reading));
}

function sentence(bar: TornadoBar, reading: InputReading): string {
  const { format } = reading;
  const [low, high] = [bar.low, bar.high].map(({ netBenefit }) => outcome(netBenefit, format.money));
  const text = (value: number) => inputText(bar.id, value, reading);
  if (bar.members) {
    const all = `all ${bar.members.length} assumptions behind the ${bar.name}`;
    return `With ${all}, at their low ends, the program ${low}; at their high ends, it ${high}.`;
  }
  if (bar.id === hydrologicYearId) {
    return `If every year were like ${text(bar.low.input)}, the program ${low}; if every year were like ${text(bar.high.input)}, it ${high}.`;
  }
  const name = bar.name === bar.id ? `assumption ${bar.id}` : bar.name;
  return `If the ${name} is at its low end, ${text(bar.low.input)}, the program ${low}; at its high end, ${text(bar.high.input)}, it ${high}.`;
}

function outcome(netBenefit: number, money: InputReading["format"]["money"]): string {
  if (Math.abs(netBenefit) < 1) return "saves as much as it costs";
  const amount = money(Math.abs(netBenefit));
  return netBenefit > 0 ? `saves ${amount} more than it costs` : `costs ${amount} more than it saves`;
}
