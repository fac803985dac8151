import { z } from "zod";

const text = z.string().min(1);
const measured = (most: number) => z.number().gt(0, "above 0").max(most, `at most ${most}`).optional();

const lake = z.strictObject({
  name: text,
  region: text,
  species: z.enum(["zebra", "quagga"]),
  water: z
    .strictObject({
      calcium: measured(1000),
      ph: measured(14),
      alkalinity: measured(1000),
      hardness: measured(2000),
      conductivity: measured(20_000),
    })
    .refine((water) => Object.keys(water).length > 0, "at least one value; a lake without one under leftOut"),
  waterSource: text,
  infestedSource: text,
});

export const habitatSchema = z.strictObject({
  lakes: z.array(lake).min(1, "at least one lake"),
  /** Infested lakes of whose water nothing was read. */
  leftOut: z.array(text),
});

/** Lakes known to be infested, against which the classes of habitat are held. */
export type HabitatLakes = z.output<typeof habitatSchema>;
export type InfestedLake = HabitatLakes["lakes"][number];
