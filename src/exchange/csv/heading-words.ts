import type { Meaning } from '#engine/list/meaning.ts';
import { foldHeading } from './fold-heading.ts';

/** How strongly a heading speaks for a meaning: 3 says it outright, 1 allows it. */
export interface WordHint {
  readonly meaning: Meaning;
  readonly weight: number;
}

/** The meanings a heading's words allow, strongest first; none for words we do not know. */
export function hintsOf(heading: string): readonly WordHint[] {
  const folded = foldHeading(heading);
  if (folded === '') return [];
  const exact = WORDS.get(folded);
  if (exact !== undefined) return exact;
  const tokens = folded.split(' ');
  const plain = WORDS.get(tokens.filter((token) => token !== 'dmx').join(' '));
  if (plain !== undefined) return plain.map(({ meaning, weight }) => ({ meaning, weight: weight * 0.9 }));
  return tokens.some((token) => OTHER_MATTERS.has(token)) ? [] : hintsOfPart(tokens);
}

/** How many of a row's cells are headings we know, each meaning counted once. */
export function knownHeadings(cells: readonly string[]): number {
  const meanings = new Set<Meaning>();
  for (const cell of cells) {
    const [first] = cell.length <= 60 ? hintsOf(cell) : [];
    if (first !== undefined) meanings.add(first.meaning);
  }
  return meanings.size;
}

/** The longest run of words we know within a heading, the plainest of several; it speaks a little less clearly than the whole. */
function hintsOfPart(tokens: readonly string[]): readonly WordHint[] {
  const says = (meaning: Meaning) => tokens.some((token) => WORDS.get(token)?.[0]?.meaning === meaning);
  if (says('universe') && says('address')) return [{ meaning: 'address', weight: 3 }];
  for (let length = Math.min(tokens.length - 1, 4); length >= 1; length--) {
    const runs = tokens.slice(0, tokens.length - length + 1).map((_, from) => tokens.slice(from, from + length));
    const known = runs
      .filter(([first = '']) => length > 1 || first.length > 2)
      .map((run) => WORDS.get(run.join(' ')) ?? [])
      .filter((hints) => hints.length > 0);
    const best = known.toSorted((a, b) => (b[0]?.weight ?? 0) - (a[0]?.weight ?? 0))[0];
    if (best !== undefined) return best.map(({ meaning, weight }) => ({ meaning, weight: weight * 0.7 }));
  }
  return [];
}

// Words that turn a heading to a matter of another kind: `unit weight`, `circuit load`, `colour temperature`.
const OTHER_MATTERS = new Set(
  (
    'kw w watt watts va amp amps ampere power leistung puissance potencia potenza vermogen potencia moc effekt last load ' +
    'kg weight gewicht poids peso gewicht waga vikt vaegt vekt price preis cost temperature temp kelvin serial uid ip mac ' +
    'date datum checked ok cable kabel length hours lamphours tilt pan angle winkel height hohe'
  ).split(' '),
);

// The words people write over their columns. Source: common practice of the trade in each language. Order of languages:
// English; German; French; Spanish; Italian; Dutch; Portuguese; Polish; Swedish, Danish, Norwegian.
const STRONG: Partial<Record<Meaning, string>> = {
  channel: `channel|chan|ch|channel no|channel number|chan no|ch no|chan #|channel #|ch #|control channel|desk channel|ctrl channel
    |kanal|kanalnummer|kanal nr|kan|pultkanal|steuerkanal|desk kanal|canal|no canal|n canal|numero de canal|canal console|n de canal
    |canale|canale no|canale n|kanaal|kanaalnummer|kanaal nr|kanal nr|numer kanalu|kanalnummer|nr kanalu`,
  position: `position|pos|location|hanging position|hang position|lighting position|bar|truss|where
    |hangeposition|haengeposition|hangepunkt|ort|standort|zug|zuglinie|traverse|emplacement|perche|porteuse|accroche|lieu
    |posicion|ubicacion|vara|barra|posizione|americana|ubicazione|luogo|positie|plaats|trek|locatie|posicao|local|localizacao
    |pozycja|miejsce|sztankiet|lokalizacja|placering|plats|plassering|posisjon|ophaeng|ophaengning|haengepunkt|trekk`,
  unit: `unit|unit no|unit number|unit #|u #|unit num|einheit|geratenummer|gerate nr|geraet nr|unite|no unite|n projecteur|no projecteur
    |unidad|n de unidad|unita|n unita|numero unita|eenheid|unidade|jednostka|enhet|enhed|enhetsnummer|enhedsnummer|pos nr|position no`,
  type: `type|fixture|fixture type|instrument|instrument type|unit type|lantern|lantern type|luminaire|luminaire type|model|make and model|make model
    |gerat|geraet|geratetyp|geraetetyp|typ|scheinwerfer|scheinwerfertyp|leuchte|gerateart|projecteur|projecteurs|appareil|type de projecteur|type d appareil
    |aparato|tipo|tipo de aparato|foco|proyector|luminaria|proiettore|tipo proiettore|apparecchio|faro|corpo illuminante|modello|modelo|modele|modell
    |armatuur|armatuurtype|toestel|projetor|aparelho|tipo de aparelho|refletor|urzadzenie|reflektor|oprawa|typ urzadzenia
    |armatur|armaturtyp|stralkastare|lyskaster|projektor|lampetype`,
  mode: `mode|dmx mode|modus|betriebsart|dmx modus|mode dmx|modo|modo dmx|modalita|modalita dmx|tryb|tryb dmx|lage|dmx lage|tilstand|personality`,
  footprint: `footprint|dmx footprint|# dmx|# ch|# chs|# chans|no ch|no of ch|dmx chs|dmx ch count|dmx channel count|slots|slot count|no of slots|number of slots|no of channels|number of channels|num channels|num of channels
    |# channels|# of channels|channel count|ch count|dmx channels|channels used|kanalanzahl|kanalzahl|anzahl kanale|anzahl der kanale|anzahl kanaele|anz kanale|dmx kanale|dmx kanaele
    |belegte kanale|nombre de canaux|nb canaux|nb de canaux|nbre de canaux|numero de canales|n de canales|no de canales|num canales|no canales
    |numero canali|n canali|num canali|numero di canali|aantal kanalen|numero de canais|no de canais|n de canais|liczba kanalow|ilosc kanalow
    |antal kanaler|antall kanaler|canaux dmx|canales dmx|canali dmx|canais dmx|dmx kanalen|dmx kanaler|kanaly dmx`,
  universe: `universe|univ|uni|dmx universe|universe no|universum|dmx universum|dmx linie|dmx strang|univers|univers dmx|ligne dmx|universo|universo dmx
    |linea dmx|dmx lijn|linha dmx|uniwersum|linia dmx|dmx linje|dmx univers`,
  slot: `slot|dmx slot|start slot|slot no|slot number`,
  address: `address|addr|dmx|dmx no|dmx number|dmx #|dmx nummer|dmx address|dmx addr|start address|start addr|dmx start|dmx start address|universe address|univ address|univ addr|uni addr|u addr|universe addr|universe slot|univ slot|universe start|patch address
    |adresse|dmx adresse|startadresse|dmx startadresse|start adresse|adr|dmx adr|dmx nr|startkanal|adresse dmx|adresse de depart|adresse de debut
    |direccion|direccion dmx|dir dmx|direccion de inicio|indirizzo|indirizzo dmx|ind dmx|indirizzo iniziale|adres|dmx adres|startadres|endereco|endereco dmx
    |endereco inicial|adres dmx|adres startowy|adress|dmx adress|startadress|adresse depart`,
  absolute: `absolute|absolute address|abs address|abs|absolute adresse|absolut|adresse absolue|direccion absoluta|indirizzo assoluto|absoluut adres
    |endereco absoluto|adres absolutny|adres bezwzgledny|absolut adress|absolut adresse`,
  purpose: `purpose|focus|use|usage|function|focus area|zweck|verwendung|fokus|funktion|einsatz|ausrichtung|aufgabe|usage|utilisation|fonction|reglage|direction
    |uso|funcion|proposito|enfoque|finalidad|scopo|funzione|puntamento|utilizzo|doel|functie|gebruik|toepassing|funcao|finalidade|afinacao
    |przeznaczenie|funkcja|cel|zastosowanie|syfte|anvandning|andamal|formal|brug|anvendelse|funksjon|bruk`,
  colour: `colour|color|gel|gels|gel colour|gel color|col|clr|filter|farbe|farbfilter|folie|farbfolie|couleur|gelatine|filtre|filtro|gelatina|colore|kleur|kleurfilter
    |cor|kolor|filtr|barwa|folia|farg|fargfilter|farve|farge`,
  circuit: `circuit|circ|cct|ckt|circuit no|circuit number|socket|outlet|stromkreis|lastkreis|dimmerkreis|steckdose|versorgung|circuit electrique|ligne electrique|prise|depart
    |alimentation|circuito|toma|enchufe|presa|groep|stopcontact|tomada|obwod|gniazdo|krets|uttak|uttag|kreds|stik|kurs|udtag`,
  notes: `notes|note|remarks|remark|comments|comment|accessories|bemerkung|bemerkungen|notiz|notizen|anmerkung|anmerkungen|hinweis|hinweise|kommentar|kommentare|zubehor
    |remarque|remarques|commentaire|commentaires|observation|observations|accessoires|notas|nota|observaciones|comentarios|accesorios|osservazioni|commenti|annotazioni
    |accessori|opmerking|opmerkingen|notitie|notities|obs|observacoes|comentarios|acessorios|uwagi|notatki|komentarz|anteckning|anteckningar|noteringar|anmarkning
    |bemaerkning|bemaerkninger|noter|kommentarer|merknad|merknader|notater|notat`,
  quantity: `quantity|qty|how many|pcs|anzahl|menge|stuck|stk|stuckzahl|anz|quantite|qte|nombre|nb|nbre|cantidad|cant|uds|unidades|quantita|qta|pezzi|pz
    |aantal|stuks|quantidade|qtd|qtde|ilosc|szt|sztuk|antal|antall|st`,
};

const WEAK: Partial<Record<Meaning, string>> = {
  channel: `channels|kanale|kanaele|canaux|canales|canali|kanalen|canais|kanaly|kanaler|dmx channel|circuit|no|nr|#|number|id|fixture no|fixture number|fixture id|fixture|kreis|kring|stellkreis`,
  position: 'area|platz|stelle|place|pont|rail|lx|line',
  unit: 'units|no|nr|num|number|#|nummer|lfd nr|n|numero|numer|lp|item|fixture no|fixture number|id|platz|stelle|place|u|pos',
  type: 'name|description|device|equipment|light|lamp|lampe|lampa|spot|make|manufacturer|brand|hersteller|fabrikat|marque|fabricant|marca|fabricante|produttore|merk|fabrikant|producent|tillverkare|produsent|machine|equipo|equipamento|profile|bezeichnung|head',
  mode: 'profile|layout|personality mode|config|configuration|konfiguration',
  footprint:
    'channels|chans|chs|kanale|kanaele|canaux|canales|canali|kanalen|canais|kanaly|kanaler|size|width|ch s|dmx ch',
  universe: 'u|port|line|linie|ligne|linea',
  address:
    'patch|start|dimmer|dim|dimmer no|dimmer nr|start channel|start ch|dmx channel|dmx ch|dmx kanal|dmx kanaal|canal dmx|canale dmx|gradateur|regulador|kanal dmx|startkanaal|canal inicial|canal de depart|startpunkt',
  purpose:
    'area|description|name|task|system|cue|what|opis|beschreibung|description|descripcion|descrizione|omschrijving|descricao|beskrivning|beskrivelse|effet|but|bezeichnung',
  circuit: 'dimmer|dim|dimmer no|dimmer nr|gradateur|regulador|kreis|ligne|linea|linha|kring|feed|power feed|zasilanie',
  notes: 'info|misc|description|opis|extra|other|sonstiges|divers',
  quantity: 'count|amount|no off|total|units|number',
};

const WORDS = new Map<string, WordHint[]>();
for (const [table, weight] of [
  [STRONG, 3],
  [WEAK, 1.5],
] as const) {
  for (const [meaning, words] of Object.entries(table)) {
    for (const word of words.split('|').map((each) => each.trim())) {
      const hints = WORDS.get(word) ?? [];
      if (!hints.some((hint) => hint.meaning === meaning)) hints.push({ meaning: meaning as Meaning, weight });
      WORDS.set(word, hints);
    }
  }
}
