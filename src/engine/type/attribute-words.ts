/**
 * Words that manuals use, by the English word they stand for here. English, German, French, Spanish and Italian, from
 * memory; folded (no accents, lower case). A word that stands for two gives both.
 */
const MEANINGS: Readonly<Record<string, string>> = {
  dimmer:
    'dimmer dim dimmen intensity brightness helligkeit intensitat intensite intensidad intensita gradateur variateur luminosite luminosidad luminosita',
  master: 'master maitre',
  strobe: 'strobe strobing stroboscope strob stroboskop stroboscopio estroboscopio estrobo strobo flash blitz',
  shutter: 'shutter verschluss obturateur obturador otturatore',
  pan: 'pan schwenken schwenk schwenkung panoramique panoramica',
  tilt: 'tilt neigen neigung inclinaison inclinacion inclinazione',
  movement: 'movement motion bewegung mouvement movimiento movimento',
  speed: 'speed geschwindigkeit tempo vitesse velocidad velocita',
  rate: 'rate',
  frequency: 'frequency frequenz frequence frecuencia frequenza',
  duration: 'duration dauer duree duracion durata',
  red: 'red rouge rojo rosso',
  green: 'green grun gruen vert verde',
  blue: 'blue blau bleu azul blu',
  white: 'white weiss blanc blanco bianco',
  amber: 'amber bernstein ambre ambar ambra',
  lime: 'lime limette',
  uv: 'uv ultraviolet ultraviolett ultravioleta ultravioletto',
  warm: 'warm chaud calido caldo',
  cold: 'cold cool kalt froid frio freddo',
  cyan: 'cyan zyan cian ciano',
  magenta: 'magenta',
  yellow: 'yellow gelb jaune amarillo giallo',
  color: 'color colour colors colours farbe farben couleur couleurs colore colori colores',
  temperature: 'temperature temperatur temperatura',
  wheel: 'wheel rad roue rueda ruota',
  zoom: 'zoom',
  focus: 'focus fokus foco fuoco',
  iris: 'iris',
  frost: 'frost',
  prism: 'prism prisma prisme',
  gobo: 'gobo gobos',
  animation: 'animation animacion animazione',
  rotation: 'rotation rotate rotating rotacion rotazione drehung',
  index: 'index indexing indexation position pos',
  shake: 'shake shaking',
  blade: 'blade blades klinge couteau cuchilla lama',
  shaper: 'shaper shapers framing',
  macro: 'macro macros makro makros',
  program: 'program programs programme programmes programm programma programa auto',
  effect: 'effect effects fx effekt effekte effet effets efecto efectos effetto effetti',
  fog: 'fog smoke nebel fumee brouillard humo niebla fumo',
  haze: 'haze dunst',
  fan: 'fan fans lufter ventilateur ventilador ventola',
  blower: 'blower geblase',
  control: 'control steuerung controle controllo',
  reset: 'reset',
  lamp: 'lamp lampe lampara lampada',
  function: 'function functions funktion funktionen fonction fonctions funcion funciones funzione funzioni',
  no: 'no not non kein keine ohne sans sin nessuna',
  used: 'used use assigned genutzt belegt utilise usado utilizado usato utilizzato',
  none: 'reserved reserve reserviert reservado riservato unused unbenutzt inutilise virtual virtuell',
  cto: 'cto',
  ctb: 'ctb',
  ctc: 'ctc cct',
  tint: 'tint',
  hue: 'hue farbton teinte',
  saturation: 'saturation sattigung saturacion saturazione',
  random: 'random zufall zufallig aleatoire aleatorio casuale',
  pulse: 'pulse puls impuls pulsation pulso impulso',
  curve: 'curve kurve courbe curva',
  mode: 'mode modus modo',
  a: 'a',
  b: 'b',
  'color wheel': 'farbrad farbwechsler',
  'gobo wheel': 'goborad gobowechsler',
  'warm white': 'warmweiss ww',
  'cold white': 'kaltweiss cw',
  'color temperature': 'farbtemperatur',
  'color macro': 'farbmakro farbmakros',
};

/** Words that change nothing in what a channel does. */
const FILLERS =
  'channel kanal canal canale control level value led leds of the and und et y e de der die das le la les el il main general overall linear adjustment adjust';

/** Words for cells of a unit, to be followed or led by a number. */
const PART_WORDS =
  'cell cells pixel pixels head segment zone ring section part beam zelle kopf tete cabeza testa cellule celda cella bar';

/**
 * Which words make which attribute: the first rule all of whose words are there counts. `#` stands for the counter. `likely`
 * rules are never sure; an empty attribute says that the words name none of the standard's. Names: GDTF (DIN SPEC 15800),
 * Annex B, extract; which words mean them: common practice.
 */
const RULES: readonly (readonly [words: string, attribute: string, doubt?: 'likely'])[] = [
  ['pan tilt speed', 'PositionMSpeed'],
  ['movement speed', 'PositionMSpeed'],
  ['pan speed', 'PositionMSpeed', 'likely'],
  ['tilt speed', 'PositionMSpeed', 'likely'],
  ['pan tilt macro', 'PositionEffect', 'likely'],
  ['movement macro', 'PositionEffect', 'likely'],
  ['pan tilt', ''],
  ['pan rotation', 'PanRotate'],
  ['tilt rotation', 'TiltRotate'],
  ['pan mode', 'PanMode'],
  ['tilt mode', 'TiltMode'],
  ['gobo rotation index', 'Gobo#Pos', 'likely'],
  ['gobo rotation speed', 'Gobo#PosRotate'],
  ['gobo rotation', 'Gobo#PosRotate'],
  ['gobo index', 'Gobo#Pos'],
  ['gobo shake', 'Gobo#SelectShake', 'likely'],
  ['gobo wheel', 'Gobo#'],
  ['prism rotation index', 'Prism#Pos', 'likely'],
  ['prism rotation speed', 'Prism#PosRotate'],
  ['prism rotation', 'Prism#PosRotate'],
  ['prism index', 'Prism#Pos'],
  ['animation wheel index', 'AnimationWheel#Pos'],
  ['animation wheel rotation', 'AnimationWheel#Pos', 'likely'],
  ['animation wheel', 'AnimationWheel#'],
  ['color macro speed', 'ColorMacro#Rate'],
  ['color macro', 'ColorMacro#'],
  ['color program', 'ColorMacro#', 'likely'],
  ['color temperature', 'CTC'],
  ['color wheel', 'Color#'],
  ['warm white', 'ColorAdd_WW'],
  ['cold white', 'ColorAdd_CW'],
  ['blade rotation', 'Blade#Rot'],
  ['blade a', 'Blade#A'],
  ['blade b', 'Blade#B'],
  ['shaper rotation', 'ShaperRot'],
  ['shaper macro speed', 'ShaperMacrosSpeed'],
  ['shaper macro', 'ShaperMacros'],
  ['fan', 'Fan#'],
  ['blower', 'Blower#'],
  ['strobe random', 'Shutter#StrobeRandom', 'likely'],
  ['strobe pulse', 'Shutter#StrobePulse', 'likely'],
  ['shutter strobe', 'Shutter#'],
  ['strobe duration', 'StrobeDuration'],
  ['strobe rate', 'StrobeRate'],
  ['strobe frequency', 'StrobeFrequency'],
  ['strobe speed', 'Shutter#Strobe', 'likely'],
  ['strobe mode', ''],
  ['speed', ''],
  ['no function', 'NoFeature'],
  ['no used', 'NoFeature'],
  ['dimmer curve', 'DimmerCurve'],
  ['dimmer mode', 'DimmerMode'],
  ['gobo', 'Gobo#'],
  ['prism', 'Prism#'],
  ['animation', 'AnimationWheel#', 'likely'],
  ['cto', 'CTO'],
  ['ctb', 'CTB'],
  ['ctc', 'CTC'],
  ['tint', 'Tint'],
  ['hue', 'HSB_Hue'],
  ['saturation', 'HSB_Saturation'],
  ['macro', 'Effects#', 'likely'],
  ['red', 'ColorAdd_R'],
  ['green', 'ColorAdd_G'],
  ['blue', 'ColorAdd_B'],
  ['white', 'ColorAdd_W'],
  ['amber', 'ColorAdd_RY'],
  ['lime', 'ColorAdd_GY'],
  ['uv', 'ColorAdd_UV'],
  ['cyan', 'ColorAdd_C'],
  ['magenta', 'ColorAdd_M'],
  ['yellow', 'ColorAdd_Y'],
  ['strobe', 'Shutter#Strobe'],
  ['shutter', 'Shutter#'],
  ['pan', 'Pan'],
  ['tilt', 'Tilt'],
  ['zoom', 'Zoom'],
  ['focus', 'Focus#'],
  ['iris', 'Iris'],
  ['frost', 'Frost#'],
  ['fog', 'Fog#'],
  ['haze', 'Haze#'],
  ['reset', 'FixtureGlobalReset'],
  ['lamp control', 'LampControl'],
  ['lamp', 'LampControl', 'likely'],
  ['dimmer', 'Dimmer'],
  ['master', 'Dimmer'],
  ['color', 'Color#', 'likely'],
  ['program', 'Effects#', 'likely'],
  ['effect', 'Effects#', 'likely'],
  ['none', 'NoFeature'],
  ['function', 'Function'],
  ['control', 'Control#'],
];

export interface AttributeRule {
  readonly words: readonly string[];
  /** `#` stands for the counter; empty: none of the standard's. */
  readonly attribute: string;
  readonly doubt: boolean;
}

export const ATTRIBUTE_RULES: readonly AttributeRule[] = RULES.map(([words, attribute, doubt]) => ({
  words: words.split(' '),
  attribute,
  doubt: doubt !== undefined,
}));

/** Every word known here, folded, with the English words it stands for. */
export const WORD_MEANINGS: ReadonlyMap<string, readonly string[]> = new Map(
  Object.entries(MEANINGS).flatMap(([meaning, words]) => words.split(' ').map((word) => [word, meaning.split(' ')])),
);

const fillers: ReadonlySet<string> = new Set(FILLERS.split(' '));
const partWords: ReadonlySet<string> = new Set(PART_WORDS.split(' '));

export const isFiller = (folded: string) => fillers.has(folded);
export const isPartWord = (folded: string) => partWords.has(folded);

/** Letters of colour mixing as charts abbreviate them: `RGBW`, `CMY`. Common practice. */
export const COLOUR_LETTERS: Readonly<Record<string, string>> = {
  R: 'Red',
  G: 'Green',
  B: 'Blue',
  W: 'White',
  A: 'Amber',
  L: 'Lime',
  C: 'Cyan',
  M: 'Magenta',
  Y: 'Yellow',
};
