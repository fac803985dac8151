import { type Group, hasOwnChance, isGroup, overridesToday, type Today } from "./earlier-overrides.js";

/**
 * A document with the fields of earlier versions in today's terms, and what that did, for its author, under
 * `study.fromEarlier`. Only what changed its meaning or its name is touched; the rest is the same object.
 */
export function inTodaysTerms(document: unknown): unknown {
  if (!isGroup(document)) return document;
  const overrides = overridesToday(document.overrides);
  const boats = boatsToday(document.boats, hasOwnChance(document.overrides));
  const losses = boats.told.length > 0 ? demandLossesToday(document.options) : [];
  const structures = structuresToday(document.structures);
  const told = [...boats.told, ...losses, ...overrides.told, ...structures.told];
  if (told.length === 0) return document;
  const study = isGroup(document.study) ? document.study : {};
  const before: unknown[] = Array.isArray(study.fromEarlier) ? study.fromEarlier : [];
  return {
    ...document,
    study: { ...study, fromEarlier: [...before, ...told] },
    ...(boats.told.length > 0 ? { boats: boats.value } : {}),
    ...(overrides.told.length > 0 ? { overrides: overrides.value } : {}),
    ...(structures.told.length > 0 ? { structures: structures.value } : {}),
  };
}

const partsToday: ReadonlyMap<unknown, string> = new Map([["wetted hull", "wetted surface"]]);

/** Plans that are prescribed for parts by the names that these had. */
function structuresToday(structures: unknown): Today {
  if (!Array.isArray(structures)) return { value: structures, told: [] };
  const told: string[] = [];
  const partToday = (pinned: unknown, place: string) => {
    const now = isGroup(pinned) ? partsToday.get(pinned.part) : undefined;
    if (now === undefined || !isGroup(pinned)) return pinned;
    told.push(`${place}.part: the “${pinned.part}” is now called “${now}”; its plan is kept.`);
    return { ...pinned, part: now };
  };
  const value = structures.map((each: unknown, index) =>
    isGroup(each) && Array.isArray(each.pinned)
      ? {
          ...each,
          pinned: each.pinned.map((plan: unknown, which) =>
            partToday(plan, `structures[${index}].pinned[${which}]`),
          ),
        }
      : each,
  );
  return { value, told };
}

/** A loss of demand keeps its numbers and means less: nothing but the other fields shows that a study is an earlier one. */
const demandLossesToday = (options: unknown): string[] =>
  (Array.isArray(options) ? options : []).flatMap((each: unknown, index) =>
    isGroup(each) && each.demandLoss !== undefined
      ? [
          `options[${index}].demandLoss is now the loss at its fee, of which lower fees lose as much less; it was taken whole off every fee up to that one.`,
        ]
      : [],
  );

/** @param ownChance whether the study has a chance of its own per launch with live mussels */
function boatsToday(boats: unknown, ownChance: boolean): Today {
  if (!isGroup(boats)) return { value: boats, told: [] };
  const classes = classesToday(boats.classes, ownChance);
  const { otherPathways, ...rest } = boats;
  if (otherPathways === undefined || boats.otherWays !== undefined) {
    return classes.told.length === 0
      ? { value: boats, told: [] }
      : { value: { ...boats, classes: classes.value }, told: classes.told };
  }
  const named = {
    name: "Ways that no boat check stops",
    chance: otherPathways,
    origin: "one yearly chance of an earlier version of this study",
  };
  return {
    value: { ...rest, classes: classes.value, otherWays: [named] },
    told: [
      ...classes.told,
      "boats.otherPathways is now the one way in boats.otherWays, with the same yearly chance.",
    ],
  };
}

function classesToday(classes: unknown, ownChance: boolean): Today {
  if (!Array.isArray(classes)) return { value: classes, told: [] };
  const told: string[] = [];
  const value = classes.map((each: unknown, index) => {
    if (!isGroup(each) || each.carriesLive === undefined || each.fouled !== undefined) return each;
    const { carriesLive, ...rest } = each;
    told.push(
      `boats.classes[${index}]: carriesLive, launches with live mussels, is now fouled, launches with mussels dead or alive, with the share living beside it. The chance of a founding is now estimated from published counts, so the answer has changed.`,
    );
    return { ...rest, ...fouledOf(carriesLive, ownChance) };
  });
  return { value, told };
}

/**
 * A share with live mussels is one of fouled boats that all have living mussels; counts said how many had. With a chance
 * of the study's own per such launch the living share is left out, so that each launch keeps that chance.
 */
function fouledOf(carriesLive: unknown, ownChance: boolean): Group {
  if (!isGroup(carriesLive)) return { fouled: carriesLive, ...(ownChance ? {} : { living: "100 %" }) };
  const { live, ...counts } = carriesLive;
  const isKept = live !== undefined && !(ownChance && isAll(live));
  return { fouled: counts, ...(isKept ? { living: live } : {}) };
}

const isAll = (share: unknown): boolean =>
  share === 1 || (typeof share === "string" && /^\s*100\s*%\s*$/.test(share));
