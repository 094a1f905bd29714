import { describe, expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import { rowsOf, tableOf } from '#base/table.ts';
import { randomCardEdit } from '#tests/support/random-card.ts';
import { randomEdit, randomRig } from '#tests/support/random-rig.ts';
import { rigOf } from '#tests/support/rig-shorthand.ts';
import { isNetworkFinding, networkSentence } from '#words/network-findings.ts';
import { applyEdits } from '../../model/apply-edits.ts';
import type { CardEdit } from '../../model/card.ts';
import { removeCard, setCard } from '../../model/card-edits.ts';
import { NETWORK_RULES } from '../../model/network-trouble.ts';
import type { Rig } from '../../model/rig.ts';
import { universesOnLink } from '../../network/data-rate.ts';
import { checkRig } from '../check-rig.ts';
import { createChecker } from '../checker.ts';

// Sources of what the rules hold: facts of Art-Net 4 (protocol release 1.4) and ANSI E1.31-2016, named at each rule. The figures of
// a link are those of check values 79 and 80.
type Edits = readonly (readonly CardEdit[])[];

const FOUR = '1:1 Spot/16\n2:1 Spot/16\n3:1 Spot/16\n4:1 Spot/16';
const rigWith = (units: string, ...edits: Edits): Rig => applyEdits(rigOf(units), edits.flat());

const isOfNetwork = (rule: string) => (NETWORK_RULES as readonly string[]).includes(rule);

/** What the check finds in the network, each with what it is about. */
const found = (units: string, ...edits: Edits) => printed(rigWith(units, ...edits));
const printed = (rig: Rig) =>
  checkRig(rig).flatMap((finding) => {
    if (!isOfNetwork(finding.rule)) return [];
    const { key: _key, severity, rule, fixtures: _fixtures, ...about } = finding;
    return [`${severity} ${rule} ${JSON.stringify(about)}`];
  });
/** Only which rules, for what needs no more. */
const rulesOf = (units: string, ...edits: Edits) => found(units, ...edits).map((line) => line.split(' ')[1]);

const sacn = (universe: number, number: number, more = {}) =>
  setCard('delivery', String(universe), { by: 'sacn', sacn: number, ...more });
const artNet = (universe: number, number: number, more = {}) =>
  setCard('delivery', String(universe), { by: 'art-net', portAddress: number, ...more });
const node = (id: string, more = {}) => setCard('node', id, { name: id.toUpperCase(), ports: 8, ...more });
const port = (key: string, by: 'sacn' | 'art-net', number: number) => setCard('port', key, { by, number });

describe('rules of the network', () => {
  it('say nothing while nobody has said anything of a network, and nothing where all is well', () => {
    expect(found(FOUR)).toEqual([]);
    expect(found(FOUR, setCard('setup', 'rig', { convention: 'plus-one' }))).toEqual([]);
    const all = [1, 2, 3, 4].flatMap((n) => [...sacn(n, n), ...port(`a.${n}`, 'sacn', n)]);
    expect(found(FOUR, all, node('a', { address: '2.0.0.1', mask: '/8', link: 100, together: 4 }))).toEqual([]);
  });

  it('[NW10] two universes out of one port are a blocker that names port and universes', () => {
    const edits = [sacn(1, 11), sacn(9, 11), node('a'), port('a.2', 'sacn', 11)];
    expect(found('1:1 Spot/16', ...edits)).toEqual([
      'blocker port-fed-twice {"node":"a","name":"A","index":2,"by":"sacn","number":11,"universes":[1,9]}',
    ]);
    expect(found('1:1 Spot/16', ...edits, setCard('delivery', '9', { by: 'art-net', portAddress: 11 }))).toEqual([]);
  });

  // ANSI E1.31: 0 and 64000 to 65535 are reserved. Art-Net 4: bit 15 of a Port-Address is 0.
  it('[NW11] a reserved number is a blocker, whoever uses it', () => {
    expect(found('', sacn(1, 0), node('a'), port('a.1', 'sacn', 0), port('a.2', 'sacn', 64_000))).toEqual([
      'blocker number-reserved {"by":"sacn","number":0,"universes":[1],"ports":[{"node":"a","name":"A","index":1}]}',
      'blocker number-reserved {"by":"sacn","number":64000,"universes":[],"ports":[{"node":"a","name":"A","index":2}]}',
    ]);
    expect(rulesOf('', node('a'), port('a.1', 'art-net', 32_768))).toEqual(['number-reserved']);
    expect(rulesOf('', sacn(1, 1), sacn(2, 63_999), artNet(3, 32_767))).toEqual([]);
  });

  it('[NW12] Port-Address 0 is a note, once for all who use it', () => {
    expect(found('', artNet(1, 0), node('a'), port('a.1', 'art-net', 0))).toEqual([
      'note port-address-zero {"universes":[1],"ports":[{"node":"a","name":"A","index":1}]}',
    ]);
    expect(rulesOf('', setCard('delivery', '1', { by: 'sacn', sacn: 1, portAddress: 0 }))).toEqual([]);
  });

  it('[NW13] a universe in use that no port listens to is a caution, one for each protocol', () => {
    const edits = [sacn(1, 11), sacn(2, 12), artNet(3, 5), artNet(4, 6), sacn(9, 99), node('a')];
    expect(found(FOUR, ...edits)).toEqual([
      'caution universe-unreached {"by":"art-net","universes":[3,4],"number":null}',
      'caution universe-unreached {"by":"sacn","universes":[1,2],"number":null}',
    ]);
    const some = [
      port('a.1', 'sacn', 11),
      port('a.2', 'art-net', 12),
      port('a.3', 'art-net', 5),
      port('a.4', 'art-net', 6),
    ];
    expect(found(FOUR, ...edits, ...some)).toEqual([
      'caution universe-unreached {"by":"sacn","universes":[2],"number":12}',
    ]);
  });

  it('[NW13] a port of a node that is gone, or that it does not have, listens to nothing', () => {
    const edits = [sacn(1, 11), port('a.9', 'sacn', 11)];
    expect(rulesOf('1:1 Spot/16', ...edits)).toEqual(['universe-unreached']);
    expect(rulesOf('1:1 Spot/16', ...edits, node('a'))).toEqual(['universe-unreached', 'port-beyond']);
    expect(rulesOf('1:1 Spot/16', ...edits, node('a', { ports: null }))).toEqual([]);
  });

  it('[NW14] a universe in use of which nobody said how it travels is named, once anything is said', () => {
    expect(found(FOUR, setCard('delivery', '2', { by: 'cable' }))).toEqual([
      'caution universe-undelivered {"universes":[1,3,4]}',
    ]);
    expect(rulesOf(FOUR, node('a'))).toEqual(['universe-undelivered']);
  });

  it('[NW15] a universe in use that travels by a network without its number there is named', () => {
    const edits = [setCard('delivery', '1', { by: 'sacn', portAddress: 3 }), setCard('delivery', '7', { by: 'sacn' })];
    expect(found('1:1 Spot/16', ...edits)).toEqual(['caution delivery-unnumbered {"by":"sacn","universes":[1]}']);
  });

  // Art-Net 4: ArtDmx is unicast to subscribers, never broadcast.
  it('[NW16] Art-Net to everybody or to a group is a caution', () => {
    expect(found('', artNet(2, 5, { cast: 'broadcast' }), artNet(1, 6, { cast: 'broadcast' }))).toEqual([
      'caution cast-unfit {"cast":"broadcast","universes":[1,2]}',
    ]);
    expect(rulesOf('', artNet(2, 5, { cast: 'multicast' }), sacn(1, 1, { cast: 'multicast' }))).toEqual(['cast-unfit']);
    expect(rulesOf('', artNet(2, 5, { cast: 'unicast' }), artNet(3, 6))).toEqual([]);
  });

  // RFC 6943 (addresses without leading zeros), RFC 4632 (masks are ones and then zeros).
  it('[NW17] an address or a mask that is none is a caution', () => {
    expect(found('', node('a', { address: '2.0.0.01', mask: '255.0.255.0' }))).toEqual([
      'caution address-unreadable {"node":"a","name":"A","field":"address","value":"2.0.0.01"}',
      'caution address-unreadable {"node":"a","name":"A","field":"mask","value":"255.0.255.0"}',
    ]);
    expect(rulesOf('', node('a', { address: ' 10.1.2.3 ', mask: '/16' }))).toEqual([]);
  });

  it('[NW18] devices of one address are a blocker, however it is written', () => {
    const edits = [
      node('b', { address: '2.0.0.1' }),
      node('a', { address: ' 2.0.0.1' }),
      node('c', { address: 'x' }),
      node('d', { address: 'x' }),
    ];
    expect(found('', ...edits)[0]).toBe(
      'blocker same-node-address {"address":"2.0.0.1","nodes":[{"node":"a","name":"A"},{"node":"b","name":"B"}]}',
    );
    expect(rulesOf('', ...edits).filter((rule) => rule === 'same-node-address')).toHaveLength(1);
  });

  // RFC 1122, 3.3.1.1: who is a neighbour by the mask is sent to without a router.
  describe('[NW19] a node that its sender cannot reach by the mask of either', () => {
    const desk = node('desk', { role: 'source', address: '10.0.0.1', mask: '255.0.0.0' });
    const to = (address: string, mask = '') => [
      ...desk,
      ...node('a', { address, mask }),
      ...port('a.1', 'art-net', 5),
      ...artNet(1, 5, { sender: 'desk' }),
    ];
    it('is a caution with the universes it would get', () => {
      expect(found('', to('2.0.0.1'))).toEqual([
        'caution node-out-of-reach {"node":"a","name":"A","sender":{"node":"desk","name":"DESK"},"universes":[1]}',
      ]);
      expect(rulesOf('', to('10.9.0.1', '/16'))).toEqual(['node-out-of-reach']);
    });
    it('is none where both are neighbours, where an address cannot be read, and for what goes to a group', () => {
      expect(rulesOf('', to('10.9.0.1', '/8'))).toEqual([]);
      expect(rulesOf('', to(''))).toEqual([]);
      const group = [...to('2.0.0.1'), ...sacn(1, 5), ...port('a.1', 'sacn', 5)];
      expect(rulesOf('', group)).toEqual([]);
      expect(rulesOf('', group, sacn(1, 5, { cast: 'unicast' }))).toEqual(['node-out-of-reach']);
    });
  });

  // Art-Net 4, ArtPollReply: one NetSwitch and one SubSwitch for the ports of a reply.
  it('[NW21] ports of one reply that are set to unlike Nets or Sub-Nets are a blocker', () => {
    const ports = [
      port('a.1', 'art-net', 0x0f),
      port('a.2', 'art-net', 0x10),
      port('a.5', 'art-net', 0x20),
      port('a.6', 'sacn', 999),
    ];
    expect(found('', node('a', { together: 4 }), ...ports)).toEqual([
      'blocker mixed-sub-nets {"node":"a","name":"A","first":1,"last":4,"subNets":["0:0","0:1"]}',
    ]);
    expect(rulesOf('', node('a', { together: 1 }), ...ports)).toEqual([]);
    expect(rulesOf('', node('a'), ...ports)).toEqual([]);
    expect(rulesOf('', node('a', { together: 2 }), port('a.1', 'art-net', 1), port('a.2', 'art-net', 257))).toEqual([
      'mixed-sub-nets',
    ]);
  });

  describe('[NW22] a link', () => {
    const most = universesOnLink(10e6, { carrier: 'sacn', slots: 512, rate: 44 });
    const upTo = (count: number, more: object) =>
      Array.from({ length: count }, (_, n) => sacn(n + 1, n + 1, more)).flat();
    const desk = node('desk', { role: 'source', link: 10 });

    // Value 79: 0.2478 Mbit/s each, so that 40 go into 10 Mbit/s (facts of the standards, 3.6).
    it('carries what fills it, and one universe more is a caution with the figures', () => {
      expect(most).toBe(40);
      expect(found('', desk, upTo(most, { sender: 'desk' }))).toEqual([]);
      expect(found('', desk, upTo(most + 1, { sender: 'desk' }))).toEqual([
        'caution over-link {"node":"desk","name":"DESK","way":"sends","sacn":41,"artNet":0,"bits":10160128,"link":10}',
      ]);
    });

    it('is sent a group once, and what goes to addresses once to each node', () => {
      const two = [node('a'), node('b'), port('a.1', 'sacn', 1), port('a.2', 'sacn', 1), port('b.1', 'sacn', 1)].flat();
      const narrow = node('desk', { role: 'source', link: 0.3 });
      expect(rulesOf('', narrow, two, sacn(1, 1, { sender: 'desk' }))).toEqual([]);
      expect(found('', narrow, two, sacn(1, 1, { sender: 'desk', cast: 'unicast' }))).toEqual([
        'caution over-link {"node":"desk","name":"DESK","way":"sends","sacn":2,"artNet":0,"bits":495616,"link":0.3}',
      ]);
    });

    it('brings a universe once, to however many ports of the node', () => {
      const ports = [port('a.1', 'sacn', 1), port('a.2', 'sacn', 1), port('a.3', 'art-net', 1)].flat();
      expect(rulesOf('', node('a', { link: 0.46 }), ports, sacn(1, 1), artNet(2, 1))).toEqual([]);
      expect(found('', node('a', { link: 0.45 }), ports, sacn(1, 1), artNet(2, 1))).toEqual([
        'caution over-link {"node":"a","name":"A","way":"gets","sacn":1,"artNet":1,"bits":457600,"link":0.45}',
      ]);
    });
  });

  it('do not depend on the order of cards', () => {
    const edits = [sacn(2, 11), sacn(1, 11), node('b', { address: '2.0.0.1' }), node('a', { address: '2.0.0.1' })];
    const rig = rigWith(FOUR, ...edits, port('b.2', 'sacn', 11), port('a.1', 'sacn', 11), artNet(3, 0));
    expect(printed({ ...rig, cards: tableOf([...rowsOf(rig.cards)].reverse()) })).toEqual(printed(rig));
  });

  it('[CH23] come and go step by step as a full check says, each of them, in random networks', () => {
    const shape = { fixtures: 6, universes: 3 };
    const seen = new Set<string>();
    for (let seed = 1; seed <= 6; seed++) {
      const rng = seededRng(seed);
      let rig = randomRig(seed, shape);
      const checker = createChecker(rig);
      for (let step = 0; step < 400; step++) {
        const card = () => randomCardEdit(rng, ['node', 'port', 'delivery']);
        rig = applyEdits(rig, [card(), card(), rng.int(4) === 0 ? randomEdit(rng, shape) : card()]);
        checker.update(rig);
        const held = checker.findings().map(({ key }) => key);
        expect(held, `seed ${seed}, step ${step}`).toEqual(checkRig(rig).map(({ key }) => key));
        for (const { rule } of checker.findings()) seen.add(rule);
      }
    }
    expect(NETWORK_RULES.filter((rule) => !seen.has(rule))).toEqual([]);
  });

  it('[CH23] follow the universes in use from step to step', () => {
    const rig = rigWith('1:1 Spot/16', sacn(1, 1), node('a'), port('a.1', 'sacn', 1));
    const checker = createChecker(rig);
    const moved = applyEdits(rig, [
      { kind: 'set-cell', fixture: [...rowsOf(rig.fixtures)][0]?.id as never, field: 'address', value: 1025 },
    ]);
    expect(checker.update(moved).added.map(({ rule }) => rule)).toEqual(['universe-undelivered']);
    const gone = applyEdits(moved, [
      ...removeCard(moved, 'node', 'a'),
      ...removeCard(moved, 'port', 'a.1'),
      ...removeCard(moved, 'delivery', '1'),
    ]);
    expect(checker.update(gone).removed.map(({ rule }) => rule)).toEqual(['universe-undelivered']);
    expect(checker.findings()).toEqual([]);
  });
});

describe('sentences of the network', () => {
  const told = (units: string, ...edits: Edits) =>
    checkRig(rigWith(units, ...edits)).flatMap((finding) =>
      isNetworkFinding(finding) ? [[finding.rule, networkSentence(finding)] as const] : [],
    );
  const said = (units: string, ...edits: Edits) => told(units, ...edits).map(([, sentence]) => sentence);

  it('say what is so, with all three numbers apart, and what to do next', () => {
    expect(said('', sacn(1, 11), sacn(9, 11), node('a'), port('a.2', 'sacn', 11))).toEqual([
      'Universes 1, 9 both come out of port 2 of A, for they travel as sACN 11. Give each a number of its own',
    ]);
    expect(said('1:1 Spot/16', artNet(1, 255), node('a'))).toEqual([
      'Universe 1 travels as Art-Net 0:15:15 (0x00FF), and no port listens to that. Set a port to it, unless the units take it from the network themselves',
    ]);
    expect(said('', sacn(1, 64_000))).toEqual([
      'Universe 1 has sACN 64000, which carries no levels. Take a number of 1 to 63999',
    ]);
    expect(said(FOUR, node('a'))).toEqual([
      'Universes 1–4 are in use, and nobody has said how they travel. Say so in the network, or fill the deliveries in',
    ]);
    expect(said('', node('a', { link: 0.2 }), sacn(1, 1), port('a.1', 'sacn', 1))).toEqual([
      'A would get 1 universe (1 of sACN): 0.25 Mbit/s whole and at 44 Hz. Its link has 0.2 Mbit/s, enough for 0 at the very most. Share them out, or correct the link',
    ]);
  });

  it('end without a mark, name no code, and differ by rule', () => {
    const all = told(
      FOUR,
      [...sacn(1, 0), ...setCard('delivery', '2', { by: 'sacn' }), ...artNet(3, 0, { cast: 'broadcast', sender: 'd' })],
      [...sacn(5, 7), ...sacn(6, 7), ...sacn(4, 77)],
      node('a', { address: '2.0.0.1', mask: 'x', together: 4, ports: 4, link: 0.1 }),
      node('d', { address: '10.0.0.1', mask: '/8', link: 0.1 }),
      node('e', { address: '2.0.0.1' }),
      [
        ...port('a.1', 'sacn', 7),
        ...port('a.2', 'art-net', 0),
        ...port('a.3', 'art-net', 99),
        ...port('a.5', 'sacn', 1),
      ],
    );
    all.push(...told('1:1 Spot/16', node('a')));
    expect(new Set(all.map(([rule]) => rule))).toEqual(new Set(NETWORK_RULES));
    for (const [, sentence] of all) expect(sentence).toMatch(/^[A-Z“].*[^.]$/s);
    for (const [, sentence] of all) expect(sentence).not.toMatch(/undefined|null|NaN|art-net|\[object/);
  });
});
