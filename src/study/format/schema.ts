import { z } from "zod";
import { confirmedEntries } from "../reading/confirmed.js";
import { boats } from "./boats-schema.js";
import { monitoringSchema, responseSchema } from "./detection-schema.js";
import { workOrdersSchema } from "./export-schema.js";
import { identifier, monthly, positive, quantity, reference, shortText, year } from "./fields.js";
import { money } from "./money-schema.js";
import { programFields } from "./program-schema.js";
import type { ReadBoats, ReadLake } from "./read-records.js";
import { reportSchema } from "./report-schema.js";
import { levelFields, otherSchedules } from "./schedule-schema.js";
import { searchSchema } from "./search-schema.js";
import type { SoundOption } from "./sound-options.js";
import { stationSchema } from "./staffing-schema.js";
import { structureSchema } from "./structure-schema.js";
import { openSchema } from "./traffic-schema.js";
import { typicalPlaces } from "./typical-schema.js";
import { uncertaintySchema } from "./uncertainty-schema.js";

const lake = z.strictObject({
  name: shortText,
  description: z.string().max(2000, "at most 2,000 characters").default(""),
  species: z.enum(["zebra", "quagga"]).meta({ description: "The species that is expected" }),
  depthType: z
    .enum(["shallow", "deep"])
    .meta({ where: "the lake monitoring report: deep if it stratifies and its depths stay cold all summer" }),
  maximumElevation: quantity("elevation").meta({
    where: "the operating manual: full pool or normal maximum",
  }),
  minimumElevation: quantity("elevation").meta({
    where: "the operating manual: lowest level of normal operation",
  }),
  storageTable: z
    .array(
      z.strictObject({
        elevation: quantity("elevation"),
        area: quantity("landArea"),
        storage: quantity("volume"),
      }),
    )
    .min(2, "at least two rows")
    .meta({ where: "the area and capacity table of the dam's operating manual, or a bathymetric survey" }),
  ...levelFields,
  otherSchedules,
  storageValue: quantity("moneyPerVolume").optional().meta({
    description: "What a year without that water in store costs",
    moves: true,
  }),
  storageValueOrigin: shortText
    .optional()
    .meta({ description: "Where the value of stored water comes from" }),
  surfaceTemperature: monthly("temperature").meta({
    where: "water-quality monitoring: means of the top few feet or meters, several years",
  }),
  deepTemperature: monthly("temperature").meta({
    where: "water-quality profiles below the thermocline; the same as the surface in a lake that mixes",
  }),
  thermoclineDepth: positive("length").meta({
    where: "summer temperature profiles; in a lake that mixes, a depth below its bottom",
  }),
  airTemperature: monthly("temperature").meta({ where: "climate normals of the nearest weather station" }),
  humidity: monthly("share").meta({ where: "climate normals of the nearest weather station" }),
  chemistry: z.strictObject({
    calcium: quantity("concentration").meta({
      where: "water-quality monitoring or the water utility's yearly report; the lowest site if they differ",
    }),
    ph: z
      .number()
      .min(0, "a pH of at least 0")
      .max(14, "a pH of at most 14")
      .optional()
      .meta({ moves: true }),
    alkalinity: quantity("concentration").optional().meta({ moves: true }),
    hardness: quantity("concentration").optional().meta({ moves: true }),
    oxygen: quantity("concentration").optional().meta({ moves: true }),
    conductivity: quantity("conductivity").optional().meta({ moves: true }),
    salinity: quantity("salinity").optional().meta({ moves: true }),
  }),
  calciumScheme: z.enum(["whittier", "mackie-claudi"]).default("whittier"),
  infestedSince: year.optional().meta({ description: "Set if the lake is infested already" }),
});

const share = (usual: number, description: string) => quantity("share").prefault(usual).meta({ description });

const checkSteps = {
  declaration: quantity("share").meta({
    description: "Owners of risky boats who say so",
    where: "own seasons, or reports of programs that compared declarations with inspections",
  }),
  quickCheck: quantity("share").meta({
    description: "Risky boats not declared that the quick check sets aside",
    where: "trials with marked boats, or published shares of other programs",
  }),
  inspection: quantity("share").meta({
    description: "Fouled boats held that the full inspection makes safe",
    typical: ["typical.sensitivity"],
  }),
  hotWash: quantity("share").meta({
    description: "Fouled boats held that the hot wash makes safe",
    typical: ["typical.efficacy"],
  }),
};

const option = z.strictObject({
  id: identifier,
  name: shortText,
  description: z.string().max(1000, "at most 1,000 characters").default(""),
  steps: z
    .strictObject({
      coverage: quantity("share")
        .optional()
        .meta({
          where: "hours of the stations against counts of launches",
          typical: ["typical.coverage-roadside", "typical.coverage-locked-ramp"],
          description:
            "Launches in open hours over all launches; computed where the option gives its open hours",
        }),
      ...checkSteps,
      falseAlarm: share(0, "Boats without mussels that are flagged by mistake"),
      washedAnyway: share(1, "Of those, washed anyway"),
      hold: z
        .strictObject({ share: quantity("share"), days: quantity("duration") })
        .prefault({ share: 0, days: "0 d" })
        .meta({
          description: "Boats held for full inspection that must dry before they launch, and for how long",
        }),
      refusal: share(0, "Fouled boats held for full inspection that are turned away"),
      seals: z
        .array(z.strictObject({ vesselClass: reference("boats.classes"), share: quantity("share") }))
        .default([])
        .meta({ description: "Classes whose boats carry a seal and pass at a glance" }),
      byClass: z
        .array(
          z
            .strictObject({ vesselClass: reference("boats.classes") })
            .extend(z.strictObject(checkSteps).partial().shape),
        )
        .default([])
        .meta({ description: "Classes for which some steps work otherwise" }),
      deterrence: share(
        0,
        "Fewer fouled arrivals because people know; no published size, so none if left out",
      ),
      origin: shortText,
    })
    .optional()
    .meta({ description: "Left out for an option without inspection" }),
  rampUp: z
    .array(
      z.strictObject({
        reach: quantity("share").meta({
          description: "Of the boats that the program in full meets, and keeps away",
        }),
        cost: quantity("share").meta({ description: "Of its yearly cost in full" }),
      }),
    )
    .max(100, "at most 100 years")
    .default([])
    .meta({
      description: "How far the program has grown in its first, second, … year; in full after them",
      rows: "years",
    }),
  open: openSchema,
  station: stationSchema,
  schedule: reference("lake.otherSchedules").optional().meta({
    description: "Id from lake.otherSchedules: the schedule that the lake follows once it is infested",
  }),
  ...programFields,
  monitoring: monitoringSchema,
  response: responseSchema,
  afterInfestation: z
    .strictObject({ share: quantity("share") })
    .meta({ description: "Share of the yearly cost that goes on once the lake is infested" }),
});

export const studySchema = z.strictObject({
  study: z.strictObject({
    name: shortText,
    authority: shortText,
    board: shortText,
    prepared: z.iso.date('a date written "YYYY-MM-DD"'),
    preparedBy: shortText,
    invented: z.boolean().default(false).meta({ description: "True for demonstration data" }),
    units: z.enum(["us", "si"]),
    requestedOption: reference("options").meta({ description: "The option for which money is asked" }),
    existingOption: reference("options").optional().meta({
      description:
        "The option in force now: what the others add to it is told beside the comparison with no program; not used for an infested lake",
    }),
    fromEarlier: z
      .array(z.string().max(1000, "at most 1,000 characters"))
      .max(500, "at most 500 lines")
      .default([])
      .meta({
        description:
          "What became of fields of an earlier version, for you to check; remove a line when you have",
      }),
    typical: typicalPlaces,
    confirmed: confirmedEntries,
    uncertainty: uncertaintySchema.optional().meta({
      description: "How futures are drawn; left out, they are drawn in the usual way",
    }),
  }),
  lake,
  structures: z.array(structureSchema).min(1, "at least one structure").max(2000, "at most 2,000 structures"),
  boats,
  options: z
    .array(option)
    .min(2, "at least one program or schedule of levels beside the option that does nothing"),
  money,
  overrides: z
    .array(
      z.strictObject({
        id: z.string(),
        value: z.union([z.string(), z.number()]),
        reason: shortText,
      }),
    )
    .default([])
    .meta({ description: "Own values for assumptions, each with its reason" }),
  workOrders: z
    .strictObject({ export: workOrdersSchema, origin: shortText })
    .optional()
    .meta({ description: "How work orders and outages were last measured; what they say are own values" }),
  search: searchSchema.optional(),
  report: reportSchema,
});

/** A study as written: every field is well formed, but fields may contradict one another. */
export type WrittenStudy = z.output<typeof studySchema>;

/** A consistent study with its records parsed. */
export type StudyDocument = Omit<WrittenStudy, "lake" | "boats" | "options"> & {
  readonly lake: ReadLake<WrittenStudy["lake"]>;
  readonly boats: ReadBoats;
  readonly options: SoundOption<WrittenStudy["options"][number]>[];
};

/** JSON Schema of the study file as written by its author. */
export function studyJsonSchema(): object {
  return z.toJSONSchema(studySchema, { io: "input", unrepresentable: "any" });
}
