import { describe, expect, it } from "vitest";
import { inputErrorOf } from "../example.js";
import { runOf, slipsOf, toldAt } from "../slips.js";

/**
 * By hand: 0.028 m³/s in 25 mm is 57 m/s; 1,170 cfs in 15 in is 953 ft/s. A ramp of 48 ft
 * has 14.63/4 = 3.6576 lanes, and a day 24·60 minutes. The losses are those of the table of pipes,
 * which has tests of its own.
 */
const slips = slipsOf(`
25 mm in place of 250 | ninemoss | structures[intake].conduit.diameter | 25 mm | runs at 57 m/s | no faster than 20 m/s
a penstock ten times too narrow | sorrel | structures[hydropower].penstock.diameter | 15 in | runs at 953 ft/s | no faster than 65.6 ft/s
a cooling line ten times too narrow | sorrel | structures[hydropower].coolingWater.diameter | 0.6 in | ft/s | no faster than 65.6 ft/s
a conduit that needs more head than there is | sorrel | structures[irrigation-intake].supply.availableHead | 0.5 ft | takes 2.28 ft of head | the available head, 0.5 ft | structures[irrigation-intake].conduit.diameter
a cooling line with too little head | sorrel | structures[hydropower].coolingWater.availableHead | 1 ft | takes 4.35 ft of head | the available head, 1 ft | structures[hydropower].coolingWater.diameter
a penstock that takes more than the head | sorrel | structures[hydropower].penstock.length | 640,000 ft | of head with the pipe clean | from the highest lake to the tailwater, 244 ft | structures[hydropower].penstock.diameter
a loss beyond any pump | ninemoss | structures[intake].conduit.length | 6400 km | of head with the pipe clean | 1,000 m, more than pumps of a water supply give | structures[intake].conduit.diameter
a rack whose clean loss is past its limit | sorrel | structures[irrigation-intake].rack.headLossLimit | 0.001 ft | less than the clean rack takes | at least what the clean rack takes
an intake above the water all year | ninemoss | structures[intake].elevation | 412.58 m | 412.58 m, above the water all year | up to the highest level of the year, 412.538 m
a power intake above the water all year | sorrel | structures[hydropower].elevation | 2,138 ft | above the water all year | up to the highest level of the year, 2,136 ft
bars further apart than the rack is wide | sorrel | structures[city-intake].rack.clearSpacing | 200 in | 200 in | narrower than the rack, which measures 16 ft
launches of a year for those of a day | sorrel | structures[ramp].launchesPerDay.jul | 73,000 | 19,958 at each lane | at most 1,440 a day at a lane
`);

describe("an entry that no structure could have", () => {
  it.each(slips)("is refused at its place: $why", (slip) => {
    const { text, keys } = toldAt(slip);
    expect(inputErrorOf(() => runOf(slip)).problems).toContainEqual({
      path: text,
      at: keys,
      found: expect.stringContaining(slip.found),
      allowed: expect.stringContaining(slip.allowed),
      remedy: expect.stringMatching(/^[A-Z].*\.$/),
    });
  });

  it("is refused of an outlet so high that no level of the lake drives the demand", () => {
    const [gravity] = slips.filter(({ place }) => place.includes("irrigation-intake"));
    if (!gravity) throw new Error("no slip of the irrigation intake");
    const supply = { by: "gravity", outletElevation: "2,139.5 ft" };
    const problems = inputErrorOf(() =>
      runOf({ ...gravity, place: "structures[irrigation-intake].supply", value: supply }),
    ).problems;
    expect(problems.map(({ allowed }) => allowed)).toContain(
      "at most the head from the highest lake to the outlet, 0.5 ft",
    );
  });
});
