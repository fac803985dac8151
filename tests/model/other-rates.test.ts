import { npv } from "financial";
import { describe, expect, it } from "vitest";
import { type Comparison, compare } from "../../src/model/compare.js";
import type { ProgramOption, StudyInput } from "../../src/model/inputs.js";
import { assumed } from "./assumptions.js";
import { relativeGap } from "./near.js";
import { duties, fixedDock, floatingDock, noProgram, program, studyOf } from "./study.js";

const study = studyOf([floatingDock, fixedDock, duties]);
const withOption = (option: ProgramOption, money: Partial<StudyInput["money"]>): StudyInput => ({
  ...study,
  options: [noProgram, option],
  money: { ...study.money, ...money },
});

const programOf = ({ options: [option] }: Comparison) => {
  if (!option) throw new Error("no program");
  return option;
};

describe("an option at the discount rates beside the study's", () => {
  it.each(["mid-year", "end-of-year"] as const)("has the present values of its flows, %s", (timing) => {
    const rates = [0.01, 0.11];
    const rented = { ...program, equipment: [] };
    const comparison = compare(withOption(rented, { timing, otherDiscountRates: rates }), assumed);
    const balance = programOf(comparison);
    const { baseline } = comparison;
    const saved = baseline.expectedByYear.map(
      ({ total }, year) => total.toNumber() - (balance.result.expectedByYear[year]?.total.toNumber() ?? 0),
    );
    expect(balance.atOtherRates().map(({ rate }) => rate)).toEqual(rates);
    for (const { rate, netBenefit } of balance.atOtherRates()) {
      // npv of financial 0.2.4 counts its first flow at time 0, hence the zero in front; mid-year is half a year earlier.
      const expected = npv(rate, [0, ...saved]) * (timing === "mid-year" ? Math.sqrt(1 + rate) : 1);
      expect(relativeGap(netBenefit.toNumber(), expected)).toBeLessThan(1e-10);
    }
  });

  it("weighs the same yearly payments for equipment as at the study's own rate", () => {
    // Bought equipment is paid off at the study's rate: an option that pays as much as a yearly line is worth the same.
    const at = (option: ProgramOption) =>
      programOf(compare(withOption(option, { otherDiscountRates: [0.11, 0.12] }), assumed));
    const bought = at(program);
    const rent = bought.result.programPerYear.minus(at({ ...program, equipment: [] }).result.programPerYear);
    const line = { name: "Rent", cost: rent.toNumber() };
    const rented = at({ ...program, equipment: [], yearly: [...program.yearly, line] });
    bought.atOtherRates().forEach(({ netBenefit }, index) => {
      const other = rented.atOtherRates()[index]?.netBenefit.toNumber() ?? Number.NaN;
      expect(relativeGap(netBenefit.toNumber(), other)).toBeLessThan(1e-9);
    });
  });

  it("takes 3 % and 7 % where the study names none, and leaves out its own", () => {
    // From memory: 3 % and 7 % of OMB Circular A-4 of 2003, 7 % also of the text of 1992 of Circular A-94.
    const ratesAt = (discountRate: number) =>
      programOf(compare({ ...study, money: { ...study.money, discountRate } }, assumed))
        .atOtherRates()
        .map(({ rate }) => rate);
    expect(ratesAt(0.04)).toEqual([0.03, 0.07]);
    expect(ratesAt(0.03)).toEqual([0.07]);
  });
});
