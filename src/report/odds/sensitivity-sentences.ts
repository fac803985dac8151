import type { Sensitivity, TornadoBar } from "../../study/odds/odds.js";
import { hydrologicYearId } from "../../study/odds/odds.js";
import { type InputReading, inputText } from "../words/input-text.js";

/** How far the ends in the sentences reach. */
export const endsNote =
  "One value in ten is expected below a low end and one in ten above a high end. Everything else stays as the study has it.";

/** What the widest bars mean for the decision, a sentence each; of bars that move the same input only the widest. */
export function sensitivitySentences(
  { tornado }: Pick<Sensitivity, "tornado">,
  count: number,
  reading: InputReading,
): string[] {
  const named = new Set<string>();
  const chosen = tornado.filter((bar) => {
    const ids = bar.members ?? [bar.id];
    if (ids.some((id) => named.has(id))) return false;
    for (const id of ids) named.add(id);
    return true;
  });
  return chosen.slice(0, count).map((bar) => sentence(bar, reading));
}

function sentence(bar: TornadoBar, reading: InputReading): string {
  const { money } = reading.format;
  const [low, high] = [outcome(bar.low.netBenefit, money), outcome(bar.high.netBenefit, money)];
  const places = placesOf(bar, reading);
  if (low === high) return `If ${places.both}, the program ${outcome(bar.low.netBenefit, about(money))}.`;
  return `If ${places.low}, the program ${low}; ${places.high}, it ${high}.`;
}

const about = (money: Money) => (amount: number) => `about ${money(amount)}`;

/** Where the input stands at the ends of its bar, and anywhere from the one to the other. */
function placesOf(bar: TornadoBar, reading: InputReading): Record<"low" | "high" | "both", string> {
  if (bar.members) {
    const all = `all ${bar.members.length} assumptions behind the ${bar.name}, are at`;
    return {
      low: `${all} their low ends`,
      high: "at their high ends",
      both: `${all} their low ends or all at their high ends`,
    };
  }
  const [low, high] = [bar.low, bar.high].map(({ input }) => inputText(bar.id, input, reading));
  if (bar.id === hydrologicYearId) {
    return {
      low: `every year were like ${low}`,
      high: `if every year were like ${high}`,
      both: `every year were like any one of the record`,
    };
  }
  const name = bar.name === bar.id ? `assumption ${bar.id}` : bar.name;
  return {
    low: `the ${name} is at its low end, ${low}`,
    high: `at its high end, ${high}`,
    both: `the ${name} is at its low end, ${low}, or at its high end, ${high}`,
  };
}

type Money = InputReading["format"]["money"];

function outcome(netBenefit: number, money: (amount: number) => string): string {
  if (Math.abs(netBenefit) < 1) return "saves as much as it costs";
  const amount = money(Math.abs(netBenefit));
  return netBenefit > 0 ? `saves ${amount} more than it costs` : `costs ${amount} more than it saves`;
}
