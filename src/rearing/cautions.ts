import { givenLifeCycle } from "../species/given-life-cycle.ts";
import { checkHandling } from "../species/check-life-cycle.ts";
import type { Handling, LifeCycle } from "../species/life-cycle.ts";

/** What a caution is about. */
export type CautionId =
  | "local-law"
  | "never-release"
  | "not-native"
  | "same-region"
  | "sap-and-eyes"
  | "hygiene"
  | "parasites"
  | "sick-adults"
  | "few-animals"
  | "heat";

/** Something to know before handling the animals, short enough for a printed calendar. */
export interface Caution {
  readonly id: CautionId;
  readonly title: string;
  /** One to four plain sentences. */
  readonly text: string;
}

/** A caution, and when it applies; `null` stands for always. */
interface Rule extends Caution {
  readonly when: ((handling: readonly Handling[]) => boolean) | null;
}

const mayBeReleased = (handling: readonly Handling[]): boolean =>
  !handling.includes("never-release") && !handling.includes("not-native-in-places");

// The law comes first: nothing below helps an animal that should not have been collected.
const RULES: readonly Rule[] = [
  // Kinds of rules, not their text: a US listing proposal (89 FR 100662, 2024), plant-pest permits (USDA APHIS),
  // state and provincial collecting permits (Monarch Joint Venture handout). They change, so none is stored.
  {
    id: "local-law",
    title: "Ask before you collect",
    text: "Collecting, keeping, moving or releasing this animal may need a permit or be forbidden where you are. Ask your local authority first. Nothing in this calendar is a permission.",
    when: null,
  },
  // Common practice, no source.
  {
    id: "never-release",
    title: "Never release",
    text: "This species is a pest in places. Keep every stage closed in, release none, and freeze what is left over before you throw it away.",
    when: (handling) => handling.includes("never-release"),
  },
  // Common practice, no source.
  {
    id: "not-native",
    title: "Not native everywhere",
    text: "This species lives in places where it does not belong and can harm the animals there. Do not release it.",
    when: (handling) => handling.includes("not-native-in-places"),
  },
  // USDA APHIS page on butterfly releases (modified 29 Mar 2024): no movement of monarchs across the divide.
  {
    id: "same-region",
    title: "Stay in the region",
    text: "Do not carry or post animals to another region. They bring its diseases along, and moving them is often forbidden.",
    when: null,
  },
  // Case reports: Case Rep. Ophthalmol. Med. 2014:829469; PMC5362972; Yang & Beal 2021, Cornea 40:1607.
  // Rinsing and the eye clinic: ordinary first aid, from memory.
  {
    id: "sap-and-eyes",
    title: "Keep plant sap out of your eyes",
    text: "The sap of the food plant can injure the eye, hours after contact. Wear gloves, protect your eyes when cutting, and wash your hands before you touch your face. Sap in the eye: rinse with plenty of water at once and see an eye clinic.",
    when: (handling) => handling.includes("harmful-sap"),
  },
  // monarchparasites.uga.edu and monarchparasites.org; Monarch Joint Venture, an older and a newer page, which
  // differ on bleaching eggs and plants. Common ground: containers.
  {
    id: "hygiene",
    title: "Clean hands, clean containers",
    text: "Disease passes from animal to animal. Wash your hands before and after, keep one species to a cage and few animals to a container, and sanitise the container before the next animal. Published advice differs on bleaching plants and eggs, so this calendar asks for clean containers only.",
    when: null,
  },
  // Oberhauser et al. 2017, Ann. Ent. Soc. Am. 110:536-543: about one wild monarch larva in ten, more if old.
  {
    id: "parasites",
    title: "Wild animals may be parasitised",
    text: "An animal found outdoors may carry fly or wasp larvae and never become an adult. The older it was when found, the likelier this is.",
    when: null,
  },
  // Monarch Larva Monitoring Project, answers on infected animals.
  {
    id: "sick-adults",
    title: "Do not release sick adults",
    text: "Adults that are crumpled, weak or known to be infected stay out of the wild.",
    when: mayBeReleased,
  },
  // Joint statement of monarch scientists, 8 Oct 2015; Xerces Society.
  {
    id: "few-animals",
    title: "Keep few",
    text: "Rear a handful, not hundreds. Crowding spreads disease, and large-scale rearing for release is advised against.",
    when: null,
  },
  // York & Oberhauser 2002 (abstract read): above 29 °C is harmful to monarchs. Ragonese et al. 2024 (open data): at 34 °C 16 of 29 monarchs lived and 81 % of adults had deformed wings.
  {
    id: "heat",
    title: "No lasting heat",
    text: "Constant heat above 29 °C (84 °F) can harm or kill, whatever the dates say. Keep animals out of direct sun and closed cars.",
    when: null,
  },
];

/**
 * The usual cautions for rearing a species. They say what to ask and what to avoid; they never grant anything.
 * @param lifeCycle The species; only its `handling` is looked at.
 * @returns The cautions that apply, the law first.
 * @throws {InputError} `invalid-life-cycle` for an unknown word in it, `invalid-option` where it is missing: a
 *   misspelt word must not silence a caution.
 * @example
 * cautionsFor(danausPlexippus)[0]?.id // → "local-law"
 */
export function cautionsFor(lifeCycle: LifeCycle): readonly Caution[] {
  givenLifeCycle(lifeCycle);
  checkHandling(lifeCycle);
  return RULES.filter(({ when }) => when === null || when(lifeCycle.handling)).map(({ id, title, text }) => ({
    id,
    title,
    text,
  }));
}
