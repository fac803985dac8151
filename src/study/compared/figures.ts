/** What a figure measures, in the model's unit: money of the study, a share, a pure number. */
export type FigureKind = "money" | "share" | "ratio";

export const figures = {
  programPerYear: { name: "program, per year", kind: "money" },
  addedProgramCost: { name: "program cost added, present value", kind: "money" },
  infestation: { name: "expected damage, present value", kind: "money" },
  infestationPerYear: { name: "expected damage, per year", kind: "money" },
  netBenefit: { name: "net benefit, present value", kind: "money" },
  benefitCostRatio: { name: "benefit–cost ratio", kind: "ratio" },
  chanceAtEnd: { name: "chance of infestation within the horizon", kind: "share" },
  hazard: { name: "chance of infestation in a year", kind: "share" },
  breakEvenHazard: { name: "break-even yearly chance", kind: "share" },
  structureCost: { name: "expected cost, present value", kind: "money" },
} as const satisfies Record<string, { name: string; kind: FigureKind }>;

export type FigureName = keyof typeof figures;
