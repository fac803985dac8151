import { stringify } from "yaml";
import type { UnitSystem } from "./amounts/units-offered.js";

/** What a person says before there is a study. */
interface NewStudyNames {
  readonly name: string;
  readonly lake: string;
  readonly units: UnitSystem;
  /** Three-letter code. */
  readonly currency: string;
  /** YYYY-MM-DD */
  readonly prepared: string;
}

/** The text of a new study, with only its names and the option that does nothing. */
export function blankStudy({ name, lake, units, currency, prepared }: NewStudyNames): string {
  return stringify(
    {
      study: { name, prepared, units },
      lake: { name: lake },
      options: [{ id: "none", name: "No inspection program", afterInfestation: { share: "0 %" } }],
      money: { currency },
    },
    { lineWidth: 0 },
  );
}
