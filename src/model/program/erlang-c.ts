/** A station in an hour: Poisson arrivals, exponential service, c inspectors, first come first served (M/M/c). */
interface Station {
  readonly arrivalsPerHour: number;
  /** Mean time that one boat takes one inspector. */
  readonly serviceHours: number;
  readonly inspectors: number;
}

/** More work than inspectors, or just as much: the queue grows without end and has no steady state. */
interface OverloadedQueue {
  readonly kind: "overloaded";
  /** ρ = a/c, 1 or more. */
  readonly utilisation: number;
}

export interface SteadyQueue {
  readonly kind: "steady";
  /** ρ = a/c, below 1. */
  readonly utilisation: number;
  /** C(c, a): share of boats that find all inspectors busy. */
  readonly chanceToWait: number;
  /** Mean over all boats, W = C s/(c − a). */
  readonly meanWaitHours: number;
  /** Mean of those that wait, s/(c − a). */
  readonly delayedWaitHours: number;
  /** Mean number of boats in the queue, Lq = λ W (Little's law). */
  readonly meanWaiting: number;
}

/**
 * Steady state of M/M/c with the load a = λ s: C = B/(1 − ρ (1 − B)), where B is Erlang's loss formula.
 * Equal to [aᶜ/c! · c/(c − a)] / [Σ_{k<c} aᵏ/k! + aᶜ/c! · c/(c − a)], without its large powers.
 * Source: Erlang 1917 (from memory; any text on queues).
 * @throws RangeError if the arrivals, the service time or the number of inspectors has no meaning
 */
export function queueAt({
  arrivalsPerHour,
  serviceHours,
  inspectors,
}: Station): SteadyQueue | OverloadedQueue {
  requireNotNegative("arrivals per hour", arrivalsPerHour);
  requireNotNegative("service time in hours", serviceHours);
  const load = arrivalsPerHour * serviceHours;
  const lossShare = erlangB(load, inspectors);
  const utilisation = load / inspectors;
  if (utilisation >= 1) return { kind: "overloaded", utilisation };
  const chanceToWait = lossShare / (1 - utilisation * (1 - lossShare));
  const delayedWaitHours = serviceHours / (inspectors - load);
  const meanWaitHours = chanceToWait * delayedWaitHours;
  return {
    kind: "steady",
    utilisation,
    chanceToWait,
    meanWaitHours,
    delayedWaitHours,
    meanWaiting: arrivalsPerHour * meanWaitHours,
  };
}

/** Share of boats that wait longer than t: C e^{−(c − a) t/s}. */
export function shareWaitingOver(queue: SteadyQueue, hours: number): number {
  if (queue.chanceToWait === 0) return 0;
  return queue.chanceToWait * Math.exp(-hours / queue.delayedWaitHours);
}

/**
 * Share lost where nobody can wait, by the recursion B(0) = 1, B(k) = a B(k−1)/(k + a B(k−1)): all terms are
 * positive and at most 1, so that nothing overflows or cancels with thousands of servers.
 * Source: Erlang 1917; the recursion is the usual one (from memory).
 */
export function erlangB(load: number, servers: number): number {
  if (!Number.isSafeInteger(servers) || servers < 1) {
    throw new RangeError(`number of inspectors is ${servers}; allowed whole numbers from 1`);
  }
  let share = 1;
  for (let server = 1; server <= servers; server++) share = (load * share) / (server + load * share);
  return share;
}

function requireNotNegative(what: string, value: number): void {
  if (!Number.isFinite(value) || value < 0) {
    throw new RangeError(`${what} is ${value}; allowed numbers from 0`);
  }
}
