import { z } from "zod";
import { costGroups } from "../../model/program/groups.js";
import { quantity, reference, shortText } from "./fields.js";

const lifeYears = z.number().min(0.1, "a life of at least 0.1 years").max(100, "at most 100 years");
const mostCounted = 100_000_000;
const counted = z
  .number()
  .min(0, "at least 0")
  .max(mostCounted, `at most ${mostCounted.toLocaleString("en-US")}`);

const line = (usualGroup: (typeof costGroups)[number]) => ({
  name: shortText,
  group: z
    .enum(costGroups)
    .optional()
    .meta({ description: `What it pays for; ${usualGroup} if left out` }),
  origin: shortText.optional().meta({ description: "Where the amount comes from" }),
});

const staff = z.strictObject({
  ...line("wages"),
  hoursPerYear: z.number().min(0, "at least 0 hours").max(1_000_000, "at most 1,000,000 hours"),
  people: z
    .int("a whole number of people")
    .min(1, "at least 1 person")
    .max(1000, "at most 1,000 people")
    .optional()
    .meta({ description: "How many people share these hours" }),
  post: z
    .enum(["seasonal", "permanent"])
    .optional()
    .meta({ description: "For the staff table of the request" }),
  leaveHours: z
    .number()
    .min(0, "at least 0 hours")
    .max(1_000_000, "at most 1,000,000 hours")
    .optional()
    .meta({ description: "Of these hours, paid and not worked: leave and holidays" }),
  trainingHours: z
    .number()
    .min(0, "at least 0 hours")
    .max(1_000_000, "at most 1,000,000 hours")
    .optional()
    .meta({ description: "Of these hours, in training and not at the stations" }),
  overtime: z
    .strictObject({
      hours: z.number().min(0, "at least 0 hours").max(1_000_000, "at most 1,000,000 hours"),
      pay: z
        .number()
        .min(1, "at least the wage: 1")
        .max(5, "at most 5 times the wage")
        .meta({ description: "Times the wage: 1.5 for time and a half" }),
    })
    .optional()
    .meta({ description: "Paid hours beside those of the year; benefits and taxes as on the wage" }),
  wage: quantity("moneyPerHour").meta({ where: "the pay scale of the agency, without benefits" }),
  loading: quantity("share").meta({
    description: "Benefits and taxes on top of the wage",
    where: "the finance office",
  }),
});

const equipment = z.strictObject({
  ...line("equipment"),
  count: z
    .int("a whole number")
    .min(0, "at least 0")
    .max(mostCounted, `at most ${mostCounted.toLocaleString("en-US")}`),
  price: quantity("money"),
  life: lifeYears,
  yearlyCost: quantity("moneyPerYear")
    .optional()
    .meta({ description: "What one piece costs to run: fuel, water, repair" }),
  oneTime: z.boolean().optional().meta({
    description:
      "A cost of starting and nothing that is replaced: setting up, agreements, first training. Its life is that of the study",
  }),
});

const yearly = z.strictObject({
  ...line("other"),
  cost: quantity("moneyPerYear").optional().meta({ description: "A lump for the year" }),
  count: counted
    .optional()
    .meta({ description: "In place of a lump: how many a year, for instance 24 tows" }),
  unitCost: quantity("money").optional().meta({ description: "With count: the price of one" }),
  unit: shortText.optional().meta({ description: "With count: what is counted, for print: tow, plate, mi" }),
});

const fee = z.strictObject({
  name: shortText,
  vesselClass: reference("boats.classes")
    .optional()
    .meta({ description: "Id from boats.classes: the class that pays it; all classes if left out" }),
  countPerYear: counted.meta({ description: "Payments a year, if the fee kept nobody away" }),
  payers: counted.optional().meta({
    description:
      "Boats that make these payments, if some pay more than once; 0 where they are counted under another fee",
  }),
  fee: quantity("money"),
});

/** An option's yearly costs and revenue. */
export const programFields = {
  staff: z.array(staff).default([]),
  equipment: z.array(equipment).default([]),
  yearly: z.array(yearly).default([]),
  otherRevenue: z
    .array(z.strictObject({ name: shortText, amount: quantity("moneyPerYear"), origin: shortText }))
    .default([])
    .meta({ description: "Grants and contributions, which lower what fees would have to cover" }),
  fees: z.array(fee).default([]),
  demandLoss: z
    .strictObject({
      fee: quantity("money").meta({ description: "The highest fee for which the loss is stated" }),
      loss: quantity("share").meta({
        description:
          "Share of those who would pay that this fee keeps away; lower fees keep away proportionately fewer",
      }),
      origin: shortText,
    })
    .optional()
    .meta({
      description: "How much demand falls because of the fees; if left out, no fee keeps anyone away",
    }),
};

const programSchema = z.object(programFields);
export type ProgramDocument = z.output<typeof programSchema>;
