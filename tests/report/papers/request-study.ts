import type { Edit } from "../edited.js";

/** A request with all that it may say, at Sorrel Bend; all figures invented. */
export const requestEdits: readonly Edit[] = [
  [
    "report",
    {
      ask: {
        fund: "Fund 410, recreation",
        account: "410-7320",
        contingency: { confidence: "80 %" },
        appropriationYears: 2,
        carriedIn: "$12,500",
        payments: { launches: 20000, days: 9000, seasons: 6300 },
        sources: [
          {
            ...{ name: "State grant", share: "40 %", cap: "$40,000", match: "50 %", from: 2027, to: 2029 },
            ...{ afterwards: "The fee is raised", origin: "invented" },
          },
          {
            ...{ name: "Sheriff's patrol", payer: "city", amount: "$2,000", paysFor: ["ongoing"] },
            ...{ inKind: true, origin: "invented" },
          },
        ],
      },
    },
  ],
  [
    "options[full-season].staff",
    [
      {
        ...{ name: "Inspectors", hoursPerYear: 4910, people: 6, wage: "$23/h", loading: "24 %" },
        ...{ post: "seasonal", trainingHours: 96, overtime: { hours: 120, pay: 1.5 } },
      },
      {
        ...{ name: "Supervisor", group: "supervision", hoursPerYear: 700, wage: "$36/h", loading: "38 %" },
        ...{ post: "permanent", leaveHours: 80 },
      },
    ],
  ],
  [
    "options[full-season].equipment",
    [
      { name: "Hot-wash unit", group: "hot-wash", count: 2, price: "$17,000", life: 8 },
      {
        name: "Agreements and forms",
        group: "administration",
        count: 1,
        price: "$6,000",
        life: 30,
        oneTime: true,
      },
    ],
  ],
  ["money.fiscalYearStart", "jul"],
];
