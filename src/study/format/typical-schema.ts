import { z } from "zod";

const longestPlace = 1000;

/**
 * Values of the study that nobody entered: their places by names, each with the id of the assumption that they come from.
 * A place is joined with strokes as those of ranges are: "structures/docks/wettedArea".
 */
export const typicalPlaces = z
  .record(
    z
      .string()
      .regex(/^[a-z][A-Za-z]*(\/[A-Za-z0-9-]+)*$/, 'a place such as "structures/docks/wettedArea"')
      .max(longestPlace, `at most ${longestPlace} characters`),
    z.string().max(60, "at most 60 characters"),
  )
  .optional()
  .meta({
    description:
      "Places of values that are typical and not the author's, each with the assumption they come from; a place leaves once its value is edited",
  });
