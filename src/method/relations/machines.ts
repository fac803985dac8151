import {
  by,
  coded,
  gravityMeaning,
  type Relation,
  type RelationGroup,
  type SymbolMeaning,
} from "./relation.js";

const powerWords: readonly SymbolMeaning[] = [
  ["P", "power", "W"],
  ["η", "efficiency", ""],
  ["ρ", "density of water, 1000", "kg/m³"],
  gravityMeaning,
  ["Q", "flow", "m³/s"],
];

const pumps: readonly Relation[] = [
  {
    title: "Pump curve",
    words:
      "Head over flow at full speed. With one point the second to fourth line hold; with three points from no flow the last two; between any others run straight lines.",
    formulas: [
      coded("H = H0 − a Q^b"),
      coded("H0 = 4 H1/3"),
      coded("b = ln(H0/(H0 − H1))/ln 2"),
      coded("a = (H0 − H1)/Q1^b"),
      coded("b = ln((H0 − H3)/(H0 − H2))/ln(Q3/Q2)"),
      coded("a = (H0 − H2)/Q2^b"),
    ],
    where: [
      ["H", "head at a flow", "m"],
      ["Q", "flow", "m³/s"],
      ["H_0", "head at no flow", "m"],
      ["a", "coefficient", ""],
      ["b", "exponent", ""],
      ["H_1", "head of the only point", "m"],
      ["Q_1", "its flow", "m³/s"],
      ["H_2", "head of the second of three points", "m"],
      ["Q_2", "its flow", "m³/s"],
      ["H_3", "head of the third", "m"],
      ["Q_3", "its flow", "m³/s"],
    ],
    sources: ["epanet-2000"],
    computedBy: by("hydraulics/pump.ts", "pumpCurve"),
  },
  {
    title: "System head and operating point",
    words: "At full speed the flow settles where the curve gives what lift and pipe need.",
    formulas: [coded("H(Q) = zd − z + h(Q)")],
    where: [
      ["H", "head of the pump at a flow", "m"],
      ["Q", "flow at full speed", "m³/s"],
      ["z_d", "level that the pump delivers to", "m"],
      ["z", "mean level of the lake in the month", "m"],
      ["h", "head lost in the conduit at that flow", "m"],
    ],
    sources: ["trade-practice"],
    computedBy: by("hydraulics/pump.ts", "operatingPoint"),
  },
  {
    title: "Water that a pump delivers",
    words:
      "An on-off pump stops when the demand is met. One of variable speed gives the head that the demand needs as long as full speed suffices.",
    formulas: [coded("min(Qd, Q)", "delivered")],
    where: [
      ["Q_d", "demand of the month", "m³/s"],
      ["Q", "flow at full speed", "m³/s"],
    ],
    sources: ["trade-practice"],
    computedBy: by("hydraulics/pump.ts", "pumpRun"),
  },
  {
    title: "Pump at another speed",
    words: "The affinity laws: flow goes with the speed, head with its square.",
    formulas: [coded("n² H(Q/n) = hn")],
    where: [
      ["n", "speed over full speed", ""],
      ["H", "head at full speed by the curve", "m"],
      ["Q", "flow", "m³/s"],
      ["h_n", "head that the flow needs", "m"],
    ],
    sources: ["trade-practice"],
    computedBy: by("hydraulics/pump.ts", "relativeSpeed"),
  },
  {
    title: "Pumping",
    words: "Power of a pump at its flow and head; the energy of a month for the head that the layer adds.",
    formulas: [coded("ρ g Q H / η", "P"), coded("E = ρ g Q (hf − hc) τ/η")],
    where: [
      ...powerWords,
      ["H", "head", "m"],
      ["E", "energy added", "W·h"],
      ["h_f", "head lost, fouled", "m"],
      ["h_c", "head lost, clean", "m"],
      ["τ", "hours in the month", "h"],
    ],
    sources: ["trade-practice"],
    computedBy: by("hydraulics/power.ts", "pumpPower"),
  },
];

const turbines: readonly Relation[] = [
  {
    title: "Efficiency of a turbine at part load",
    words:
      "Its largest efficiency times a shape known at five flows, straight between them; nothing below a technical minimum. The generator's efficiency multiplies it. A study may give one efficiency of the whole unit in its place.",
    formulas: [coded("η = ηm (y1 + (y2 − y1)·(φ − φ1)/(φ2 − φ1))")],
    where: [
      ["η", "efficiency of the turbine", ""],
      ["η_m", "its largest, by type", ""],
      ["φ", "flow over rated flow", ""],
      ["φ_1", "known flow below, over the rated flow", ""],
      ["φ_2", "known flow above", ""],
      ["y_1", "efficiency over its largest at the flow below", ""],
      ["y_2", "the same at the flow above", ""],
    ],
    sources: ["esha-2004"],
    computedBy: by("hydraulics/turbine.ts", "turbineEfficiency"),
  },
  {
    title: "Turbine power and energy lost",
    words:
      "Power at the net head; the energy of a month that is not made for the head that the layer takes, at the month's price.",
    formulas: [coded("η ρ g Q (H − h)", "P"), coded("E = η ρ g Q (hf − hc) τ")],
    where: [
      ...powerWords,
      ["H", "lake level less tailwater", "m"],
      ["h", "head lost on the way", "m"],
      ["E", "energy not made", "W·h"],
      ["h_f", "head lost, fouled", "m"],
      ["h_c", "head lost, clean", "m"],
      ["τ", "hours that the unit runs in the month", "h"],
    ],
    sources: ["trade-practice"],
    computedBy: by("hydraulics/power.ts", "hydroPower"),
  },
  {
    title: "Hours and flow while running",
    words:
      "Velocity, settlement, head loss and efficiency follow the flow while a unit runs, energy its hours. They are entered; of a monthly mean alone a unit is taken to run at its turbine's rated flow, and where that is not known at the mean in all hours.",
    formulas: [coded("τ = nr τm/n", "with units running"), coded("τ = Q τm/Qr", "of a monthly mean")],
    where: [
      ["τ", "hours that a unit runs in the month", "h"],
      ["τ_m", "hours in the month", "h"],
      ["n_r", "units running, the mean over the month", ""],
      ["n", "units", ""],
      ["Q", "mean flow through one unit over the month", "m³/s"],
      ["Q_r", "rated flow of its turbine", "m³/s"],
    ],
    sources: ["project-judgement"],
    computedBy: by("structures/plant/running.ts", "plantRunning"),
  },
];

const lines: readonly Relation[] = [
  {
    title: "What a service line still does",
    words:
      "Water delivered, at most the need, over the same when clean; heat in place of water where the line cools an exchanger, whose fouling grows with the line's cover. What is missing derates the unit, or costs its share of a day without the line.",
    formulas: [coded("S = min(Qn, Qf)/min(Qn, Qc)"), coded("S = qf/qc"), coded("R = Rr·min(1, c/c1)")],
    where: [
      ["S", "share that the line still does", ""],
      ["Q_n", "flow needed", "m³/s"],
      ["Q_f", "flow that the head drives, fouled", "m³/s"],
      ["Q_c", "the same clean", "m³/s"],
      ["q_f", "heat carried off, fouled", "kW/K"],
      ["q_c", "the same clean", "kW/K"],
      ["R", "fouling resistance", "m²K/W"],
      ["R_r", "the same with river water", "m²K/W"],
      ["c", "cover of the layer in the line", ""],
      ["c_1", "cover of a closed layer", ""],
    ],
    sources: ["tema"],
    computedBy: by("structures/small-line.ts", "serviceShare"),
  },
  {
    title: "Wall of an exchanger",
    words: "A fouled wall passes less heat.",
    formulas: [coded("1/U = 1/Uc + R")],
    where: [
      ["U", "coefficient of heat transfer", "W/(m²K)"],
      ["U_c", "the same clean", "W/(m²K)"],
      ["R", "fouling resistance", "m²K/W"],
    ],
    sources: ["trade-practice"],
    computedBy: by("hydraulics/exchanger.ts", "fouledCoefficient"),
  },
  {
    title: "Effectiveness of an exchanger",
    words:
      "Counterflow, by the number of transfer units; the second line where both sides carry the same heat.",
    formulas: [
      coded("ε = (1 − exp(−NTU (1−C)))/(1 − C exp(−NTU (1−C)))"),
      coded("NTU/(1 + NTU)", "ε"),
      coded("NTU = U A/Cmin"),
      coded("C = Cmin/Cmax"),
    ],
    where: [
      ["ε", "heat carried off over the most that could be", ""],
      ["NTU", "number of transfer units", ""],
      ["U", "coefficient of heat transfer", "kW/(m²K)"],
      ["A", "area", "m²"],
      ["C", "ratio of the two", ""],
      ["C_min", "mass flow times specific heat of the side with less", "kW/K"],
      ["C_max", "of the other side", "kW/K"],
    ],
    sources: ["trade-practice"],
    computedBy: by("hydraulics/exchanger.ts", "counterflowEffectiveness"),
  },
  {
    title: "Heat carried off",
    words: "For each degree between the two inlets.",
    formulas: [coded("q = ε Cmin")],
    where: [
      ["q", "heat carried off", "kW/K"],
      ["ε", "effectiveness", ""],
      ["C_min", "mass flow times specific heat of the side with less", "kW/K"],
    ],
    sources: ["trade-practice"],
    computedBy: by("hydraulics/exchanger.ts", "exchangerDuty"),
  },
];

export const machineRelations: RelationGroup = {
  title: "Pumps, turbines and service lines",
  relations: [...pumps, ...turbines, ...lines],
};
