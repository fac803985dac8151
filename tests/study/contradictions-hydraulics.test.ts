import { describe, it } from "vitest";
import { type Contradicting, expectContradiction, typed } from "./contradicting.js";
import { absent } from "./example.js";
import { intake, line, plant, turbine, withPump } from "./hydraulic-entries.js";

const cases: readonly Contradicting[] = [
  {
    why: "a gap narrower than its bars",
    edits: [
      [`${intake}.rack.clearSpacing`, "10 mm"],
      [`${intake}.rack.barThickness`, "12 mm"],
    ],
    found: "10 mm",
    allowed: "at least the thickness of a bar, 12 mm",
  },
  {
    why: "a wall known in two ways",
    edits: [[`${intake}.conduit.hazenWilliamsC`, 120]],
    at: `${intake}.conduit.roughness`,
    found: "both roughness and hazenWilliamsC",
    allowed: "exactly one of roughness and hazenWilliamsC",
  },
  {
    why: "a penstock whose wall is not known",
    edits: [[`${plant}.penstock.roughness`, absent]],
    found: "neither roughness nor hazenWilliamsC",
    allowed: "exactly one",
  },
  {
    why: "a cooling-water line whose wall is not known",
    edits: [[`${plant}.coolingWater.roughness`, absent]],
    found: "neither",
    allowed: "exactly one",
  },
  {
    why: "a gravity supply with a head and an outlet",
    edits: [
      [
        `${intake}.supply`,
        { by: "gravity", availableHead: "5 ft", outletElevation: typed(`${intake}.elevation`) },
      ],
    ],
    at: `${intake}.supply.availableHead`,
    found: "both availableHead and outletElevation",
    allowed: "exactly one",
  },
  {
    why: "an outlet above the lake",
    edits: [[`${intake}.supply`, { by: "gravity", outletElevation: "9,000 ft" }]],
    at: `${intake}.supply.outletElevation`,
    found: "9,000 ft",
    allowed: `below the lake's maximum, ${typed("lake.maximumElevation")}`,
  },
  {
    why: "a pump with neither margin nor curve",
    edits: withPump({ curve: undefined }),
    at: `${intake}.supply.marginHead`,
    found: "neither marginHead nor curve",
    allowed: "exactly one",
  },
  {
    why: "a pump curve whose head rises",
    edits: withPump({
      curve: [
        { flow: "0 m3/s", head: "60 m" },
        { flow: "1 m3/s", head: "62 m" },
        { flow: "2 m3/s", head: "20 m" },
      ],
    }),
    at: `${intake}.supply.curve[1].head`,
    found: "62 m",
    allowed: "below the head of the point before, 60 m",
  },
  {
    why: "a pump curve whose flows go back",
    edits: withPump({
      curve: [
        { flow: "1 m3/s", head: "60 m" },
        { flow: "1 m3/s", head: "50 m" },
        { flow: "2 m3/s", head: "20 m" },
      ],
    }),
    at: `${intake}.supply.curve[1].flow`,
    found: "1 m3/s",
    allowed: "above the flow of the point before, 1 m3/s",
  },
  {
    why: "a design flow of zero",
    edits: withPump({ curve: [{ flow: "0 m3/s", head: "60 m" }] }),
    at: `${intake}.supply.curve[0].flow`,
    found: "0 m3/s",
    allowed: "a design flow above zero",
  },
  {
    why: "a pump curve of two points",
    edits: withPump({
      curve: [
        { flow: "0 m3/s", head: "60 m" },
        { flow: "1 m3/s", head: "50 m" },
      ],
    }),
    at: `${intake}.supply.curve`,
    found: "2 points",
    allowed: "one design point, or three and more",
  },
  {
    why: "a pump curve that does not say where it delivers",
    edits: withPump({ deliveryElevation: undefined }),
    at: `${intake}.supply.deliveryElevation`,
    found: "nothing",
    allowed: "a value, since the pump has a curve",
  },
  {
    why: "a control without a curve",
    edits: withPump({ curve: undefined, deliveryElevation: undefined, marginHead: "3 m" }),
    at: `${intake}.supply.control`,
    found: "on-off",
    allowed: "no value, since the pump has no curve",
  },
  {
    why: "a pump that delivers below the lake",
    edits: withPump({ deliveryElevation: "-50 ft" }),
    at: `${intake}.supply.deliveryElevation`,
    found: "-50 ft",
    allowed: `at least the lake's minimum, ${typed("lake.minimumElevation")}`,
  },
  {
    why: "a pump too weak for its demand",
    edits: withPump({ curve: [{ flow: "0.3 m3/s", head: "1 m" }] }),
    at: `${intake}.supply.curve`,
    found: "at the demand of jan, 0.5 m3/s",
    allowed: "the lift and the loss of the clean conduit",
  },
  {
    // By hand: 0.5/(π·0.03²) = 177 m/s, or 580 ft/s.
    why: "a bore that takes more head than its pump gives",
    edits: [...withPump({}), [`${intake}.conduit.diameter`, "60 mm"]],
    at: `${intake}.conduit.diameter`,
    found: "runs at 580 ft/s",
    allowed: "a bore that takes less than the pump gives there",
  },
  {
    why: "a turbine and an efficiency",
    edits: [[`${plant}.turbine`, turbine]],
    at: `${plant}.efficiency`,
    found: "both efficiency and turbine",
    allowed: "exactly one of efficiency and turbine",
  },
  {
    why: "a turbine smaller than the flow through it",
    edits: [
      [`${plant}.turbine`, { ...turbine, ratedFlow: "1 m3/s" }],
      [`${plant}.efficiency`, absent],
      [`${plant}.running.flow.jul`, "500 m3/s"],
    ],
    at: `${plant}.turbine.ratedFlow`,
    found: "1 m3/s",
    allowed: "at least the largest flow through one unit, 500 m3/s",
  },
  {
    why: "a service line above the lake",
    edits: [["structures[0]", { ...line, elevation: "9,000 ft" }]],
    at: "structures[0].elevation",
    found: "9,000 ft",
    allowed: "the lake's maximum",
  },
  {
    why: "a service line whose wall is not known",
    edits: [["structures[0]", { ...line, roughness: undefined }]],
    at: "structures[0].roughness",
    found: "neither",
    allowed: "exactly one",
  },
];

describe("the hydraulics of a structure", () => {
  it.each(cases)("are refused for $why", expectContradiction);
});
