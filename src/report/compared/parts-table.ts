import type { PartDifference } from "../../study/compared/by-part.js";
import type { ComparedRun } from "../../study/compared/compared.js";
import { type Formatter, percent, ratio, significant } from "../words/format.js";
import { head, num, row, type TableView } from "../words/view-types.js";

/** What is said of two lakes in place of what explains their difference. */
export interface OtherLake {
  readonly words: string;
  readonly table: TableView;
}

const told: Readonly<Record<PartDifference["part"], readonly [name: string, figure: string]>> = {
  structures: ["Lake and structures", "Damage per year, once established"],
  boats: ["Boats", "Chance of infestation in a year, without a program"],
  program: ["Program", "Cost per year of what is requested"],
  money: ["Money and who pays", "Present value of 1 a year over the horizon"],
};

const isAmount = ({ part }: PartDifference) => part === "structures" || part === "program";

/** The parts of two lakes in the order of what differs most; absent where both studies are of one. */
export function otherLake(
  [left, right]: readonly [ComparedRun, ComparedRun],
  parts: readonly PartDifference[],
  format: { readonly left: Formatter; readonly right: Formatter },
): OtherLake | undefined {
  if (parts.length === 0) return undefined;
  const lakes = [left, right].map(({ document }) => document.lake.name);
  const sameMoney = left.document.money.currency === right.document.money.currency;
  const amount = (each: PartDifference, side: "left" | "right") => {
    if (isAmount(each)) return format[side].money(each[side]);
    return each.part === "boats" ? percent(each[side], 3) : significant(each[side], 3);
  };
  const times = (each: PartDifference) =>
    (isAmount(each) && !sameMoney) || each.left === 0 ? "–" : ratio(each.right / each.left);
  const last = sameMoney ? "" : "; amounts in two currencies come last";
  return {
    words: `${lakes.join(" and ")} are different lakes. Levels, structures, boats and program of a lake belong together and cannot be exchanged one by one, so that the difference is not divided among single inputs. What differs is told by part, first the part whose figure differs most${last}.`,
    table: {
      id: "table-parts",
      caption: "What differs, by part of the studies, at central values",
      head: head(
        "Part",
        num("Inputs that differ"),
        "What it decides",
        ...lakes.map(num),
        num("Right over left"),
      ),
      rows: parts.map((each) =>
        row(
          told[each.part][0],
          num(String(each.inputs)),
          told[each.part][1],
          num(amount(each, "left")),
          num(amount(each, "right")),
          num(times(each)),
        ),
      ),
    },
  };
}
