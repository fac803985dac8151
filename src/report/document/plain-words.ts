/** Words that people use for one thing: whoever types one finds texts with any of them. */
const families: readonly (readonly string[])[] = [
  ["diver", "diving", "dive crew", "underwater work"],
  ["rack", "trash rack", "bar screen", "grating", "grid"],
  ["pipe", "conduit", "penstock", "pipeline", "main", "tunnel"],
  ["boat", "vessel", "watercraft", "craft"],
  ["inspector", "inspection crew", "staff", "attendant"],
  ["wage", "pay", "salary", "labour", "labor"],
  ["wash", "decontamination", "hot water", "cleaning station"],
  ["winter", "drawdown", "lowering", "winter pool"],
  ["dry", "drying", "desiccation", "exposed", "exposure"],
  ["chlorine", "oxidant", "bleach", "hypochlorite"],
  ["coating", "paint", "foul release", "antifouling"],
  ["scrape", "cleaning", "clean", "removal", "pig", "pigging"],
  ["price", "cost", "rate", "fee", "charge"],
  ["mussel", "zebra", "quagga", "dreissenid"],
  ["settle", "settler", "larva", "veliger"],
  ["grow", "growth", "layer", "thickness", "build-up"],
  ["disposal", "landfill", "tipping", "dump", "shells"],
  ["power", "energy", "electricity", "generation", "turbine"],
  ["pump", "pumping", "lift"],
  ["flow", "discharge", "demand", "delivery"],
  ["calcium", "hardness", "chemistry", "lime"],
  ["ramp", "launch", "launch ramp", "slipway"],
  ["dock", "slip", "marina", "pier", "float"],
  ["outage", "shutdown", "down time", "downtime", "out of service"],
  ["detect", "detection", "monitoring", "sampling", "eDNA"],
  ["interest", "discount rate", "present value"],
].map((family) => family.map((word) => word.toLowerCase()));

/** What else may be typed to find a text: the other words of the things that it speaks of. */
export function otherWords(text: string): string {
  const low = text.toLowerCase();
  return families
    .filter((family) => family.some((word) => startsWord(low, word)))
    .map((family) => family.join(" "))
    .join(" ");
}

/** Whether a word of the text begins so: "pig" is not in "spigot". */
function startsWord(text: string, word: string): boolean {
  const place = text.indexOf(word);
  if (place < 0) return false;
  return !/[a-z]/.test(text.charAt(place - 1)) || startsWord(text.slice(place + word.length), word);
}
