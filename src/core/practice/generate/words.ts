/**
 * What a generated drawing calls things. Its words are part of its bytes, which never change: so they stand here with the
 * version that says them, and not in the catalogue, where a sentence may be put better. Lists are as long in each language.
 */
export interface TapWords {
  readonly stations: readonly string[];
  readonly streets: readonly string[];
  readonly works: readonly string[];
  readonly clinics: readonly string[];
  readonly title: (street: string) => string;
  readonly notes: string;
  readonly pole: (number: number) => string;
  readonly pad: (number: number) => string;
  readonly address: (number: number, street: string) => string;
  readonly addresses: (from: number, to: number, street: string) => string;
  readonly bus: (station: string) => string;
  readonly sidelineCutout: (pole: number) => string;
  readonly sidelineClamp: (pole: number) => string;
  readonly sidelineSwitch: (pole: number) => string;
  readonly recloser: (pole: number) => string;
  readonly regulators: (pole: number) => string;
  readonly tie: (pole: number) => string;
  readonly transformer: (number: number) => string;
  readonly bank: (number: number) => string;
  readonly cutoutOf: (name: string) => string;
  readonly clampOf: (name: string) => string;
  readonly arresterOf: (name: string) => string;
  readonly meterOf: (place: string) => string;
  readonly transferOf: (place: string) => string;
  readonly standbyOf: (place: string) => string;
  readonly portableOf: (place: string) => string;
  readonly solarOf: (place: string) => string;
  readonly mainOf: (place: string) => string;
  readonly motorsOf: (place: string) => string;
  readonly loadOf: (place: string) => string;
  readonly capacitor: (pole: number) => string;
  readonly capacitorCutout: (pole: number) => string;
  readonly riserCutout: (pole: number) => string;
  readonly elbowIn: (pad: number) => string;
  readonly elbowOut: (pad: number) => string;
  readonly crossing: (kv: number) => string;
  readonly leadTask: (name: string) => string;
  readonly arresterTask: (name: string) => string;
  readonly secondaryTask: (name: string) => string;
  readonly insulatorTask: (pole: number) => string;
  readonly headTask: (pole: number) => string;
  readonly cableTask: (one: number, other: number) => string;
  readonly lead: (name: string) => string;
  readonly secondary: (name: string) => string;
  readonly line: (pole: number) => string;
  readonly cableEnd: (pad: number) => string;
}

const english: TapWords = {
  stations: ["Fernhill", "Weir Bank", "Copper Beech", "Longmeadow", "Harrow Lane", "Stonecross", "Millrace"],
  streets: [
    "Quarry Lane",
    "Orchard Row",
    "Alder Court",
    "Gorse Hill",
    "Juniper Road",
    "Sandpit Lane",
    "Ferry Street",
    "Larch Walk",
    "Heron Close",
    "Tannery Road",
    "Cider Lane",
    "Bracken Way",
  ],
  works: ["sawmill", "dairy", "foundry", "cold store", "pump house", "quarry crusher", "bakery"],
  clinics: ["clinic", "fire hall", "school", "nursing home", "water works"],
  title: (street) => `${street} tap`,
  notes: "Invented, for practice.",
  pole: (number) => `Pole ${number}`,
  pad: (number) => `Pad ${number}`,
  address: (number, street) => `${number} ${street}`,
  addresses: (from, to, street) => `${from} to ${to} ${street}`,
  bus: (station) => `${station} bus`,
  sidelineCutout: (pole) => `cutout F${pole}`,
  sidelineClamp: (pole) => `sideline clamp on pole ${pole}`,
  sidelineSwitch: (pole) => `switch S${pole}`,
  recloser: (pole) => `recloser R${pole}`,
  regulators: (pole) => `regulators V${pole}`,
  tie: (pole) => `tie switch S${pole}`,
  transformer: (number) => `T${number}`,
  bank: (number) => `bank T${number}`,
  cutoutOf: (name) => `${name} cutout`,
  clampOf: (name) => `${name} clamp`,
  arresterOf: (name) => `${name} arrester`,
  meterOf: (place) => `meter of ${place}`,
  transferOf: (place) => `transfer switch of ${place}`,
  standbyOf: (place) => `standby set of ${place}`,
  portableOf: (place) => `portable generator of ${place}`,
  solarOf: (place) => `solar inverter of ${place}`,
  mainOf: (place) => `main breaker of ${place}`,
  motorsOf: (place) => `motors of ${place}`,
  loadOf: (place) => `load of ${place}`,
  capacitor: (pole) => `capacitor C${pole}`,
  capacitorCutout: (pole) => `capacitor cutouts C${pole}`,
  riserCutout: (pole) => `riser cutout F${pole}`,
  elbowIn: (pad) => `pad ${pad} elbow in`,
  elbowOut: (pad) => `pad ${pad} elbow out`,
  crossing: (kv) => `${kv} kV line`,
  leadTask: (name) => `Replace the lead between the cutout and the bushing of ${name}`,
  arresterTask: (name) => `Replace the arrester of ${name}`,
  secondaryTask: (name) => `Replace the secondary connectors of ${name}`,
  insulatorTask: (pole) => `Replace an insulator on pole ${pole}`,
  headTask: (pole) => `Replace the lead below the sideline's device on pole ${pole}`,
  cableTask: (one, other) => `Replace the cable between pads ${one} and ${other}`,
  lead: (name) => `lead at the bushing of ${name}`,
  secondary: (name) => `secondary of ${name}`,
  line: (pole) => `line on pole ${pole}`,
  cableEnd: (pad) => `cable end at pad ${pad}`,
};

const french: TapWords = {
  stations: [
    "Grandpré",
    "La Chute",
    "Hêtre-Rouge",
    "Longue-Prairie",
    "Pont-Neuf",
    "Croix-de-Pierre",
    "Vieux-Moulin",
  ],
  streets: [
    "chemin de la Carrière",
    "rang du Verger",
    "cour des Aulnes",
    "côte des Ajoncs",
    "rue des Genévriers",
    "chemin de la Sablière",
    "rue du Passeur",
    "allée des Mélèzes",
    "impasse du Héron",
    "rue de la Tannerie",
    "chemin du Cidre",
    "montée des Fougères",
  ],
  works: [
    "scierie",
    "laiterie",
    "fonderie",
    "entrepôt frigorifique",
    "station de pompage",
    "concasseur",
    "boulangerie",
  ],
  clinics: ["clinique", "caserne", "école", "résidence", "usine d'eau"],
  title: (street) => `Branchement, ${street}`,
  notes: "Inventé, pour l'exercice.",
  pole: (number) => `Poteau ${number}`,
  pad: (number) => `Socle ${number}`,
  address: (number, street) => `${number}, ${street}`,
  addresses: (from, to, street) => `${from} à ${to}, ${street}`,
  bus: (station) => `barre de ${station}`,
  sidelineCutout: (pole) => `coupe-circuit F${pole}`,
  sidelineClamp: (pole) => `pince de dérivation du poteau ${pole}`,
  sidelineSwitch: (pole) => `sectionneur S${pole}`,
  recloser: (pole) => `réenclencheur R${pole}`,
  regulators: (pole) => `régulateurs V${pole}`,
  tie: (pole) => `sectionneur de bouclage S${pole}`,
  transformer: (number) => `T${number}`,
  bank: (number) => `batterie T${number}`,
  cutoutOf: (name) => `coupe-circuit de ${name}`,
  clampOf: (name) => `pince de ${name}`,
  arresterOf: (name) => `parafoudre de ${name}`,
  meterOf: (place) => `compteur, ${place}`,
  transferOf: (place) => `inverseur, ${place}`,
  standbyOf: (place) => `groupe de secours, ${place}`,
  portableOf: (place) => `génératrice portative, ${place}`,
  solarOf: (place) => `onduleur solaire, ${place}`,
  mainOf: (place) => `disjoncteur principal, ${place}`,
  motorsOf: (place) => `moteurs, ${place}`,
  loadOf: (place) => `charge, ${place}`,
  capacitor: (pole) => `condensateur C${pole}`,
  capacitorCutout: (pole) => `coupe-circuits du condensateur C${pole}`,
  riserCutout: (pole) => `coupe-circuit de remontée F${pole}`,
  elbowIn: (pad) => `coude d'entrée du socle ${pad}`,
  elbowOut: (pad) => `coude de sortie du socle ${pad}`,
  crossing: (kv) => `ligne de ${String(kv).replace(".", ",")} kV`,
  leadTask: (name) => `Remplacer la bretelle entre le coupe-circuit et la traversée de ${name}`,
  arresterTask: (name) => `Remplacer le parafoudre de ${name}`,
  secondaryTask: (name) => `Remplacer les connecteurs au secondaire de ${name}`,
  insulatorTask: (pole) => `Remplacer un isolateur au poteau ${pole}`,
  headTask: (pole) => `Remplacer la bretelle sous l'appareil de la dérivation au poteau ${pole}`,
  cableTask: (one, other) => `Remplacer le câble entre les socles ${one} et ${other}`,
  lead: (name) => `bretelle à la traversée de ${name}`,
  secondary: (name) => `secondaire de ${name}`,
  line: (pole) => `ligne au poteau ${pole}`,
  cableEnd: (pad) => `bout du câble au socle ${pad}`,
};

/** Languages that made drawings can be labelled in. */
export type TapLanguage = "en" | "fr";

/** What version 1 says otherwise in French: it calls a lead as a tie is called. */
const frenchOfVersion1: TapWords = {
  ...french,
  leadTask: (name) => `Remplacer la liaison entre le coupe-circuit et la traversée de ${name}`,
  headTask: (pole) => `Remplacer la liaison sous l'appareil de la dérivation au poteau ${pole}`,
  lead: (name) => `liaison à la traversée de ${name}`,
};

/** The words of made drawings, by language, in each version of them. */
export const TAP_WORDS: readonly Readonly<Record<TapLanguage, TapWords>>[] = [
  { en: english, fr: frenchOfVersion1 },
  { en: english, fr: french },
];
