/** Kinds of structures, in the order of the schema. */
export const structureKinds = ["intake", "hydropower", "service-line", "dock", "ramp", "lake-wide"] as const;
