import { readFileSync } from 'node:fs';
import { unzipSync } from 'fflate';
import { XmlDocument, XsdValidator } from 'libxml2-wasm';
import { Schema } from 'node-schematron';
import { describe, expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import { DEMO_TYPES } from '#demo/types/demo-types.ts';
import type { FixtureType } from '#engine/model/fixture-type.ts';
import { GENERIC_TYPES } from '#engine/type/generic-types.ts';
import { exportGdtf } from '#exchange/gdtf/export-gdtf.ts';
import { randomType } from '#tests/support/random-type.ts';

// The published schemas (schemas/README.md), run by libxml2 and by a Schematron implementation: neither is our reading of them.
const textOf = (name: string) => readFileSync(new URL(`schemas/${name}`, import.meta.url), 'utf8');
const xsd = XsdValidator.fromDoc(XmlDocument.fromString(textOf('gdtf.xsd')));
const schematron = Schema.fromString(withoutXslt(textOf('gdtf.sch')));

/**
 * The assertions use what XSLT adds to XPath, and the implementation runs XPath on elements alone. So `current()` becomes a
 * variable, the one key an expression of its declaration, and the one rule on an attribute a rule on its element.
 */
function withoutXslt(text: string): string {
  const key = '//GDTF/FixtureType/AttributeDefinitions/FeatureGroups/FeatureGroup/Feature';
  return text
    .replaceAll('current()', '$here')
    .replace("key('featureKey', @Feature)", `${key}[concat(../@Name, '.', @Name) eq $here/@Feature]`)
    .replace(/(<sch:rule context="[^"]*)\/@ModeMaster">/, '$1[@ModeMaster]"><sch:let name="here" value="@ModeMaster"/>')
    .replaceAll('../../../../DMXChannel', '@ModeMaster/../../../../DMXChannel')
    .replace(/<sch:rule context="[^"]*(?<!\[@ModeMaster\])">/g, '$&<sch:let name="here" value="."/>')
    .replace(/<xsl:for-each[\s\S]*?<\/xsl:for-each>/g, '');
}

const descriptionOf = (type: FixtureType) =>
  new TextDecoder().decode(unzipSync(exportGdtf(type))['description.xml'] ?? new Uint8Array());

const assertionFaults = (description: string) =>
  schematron.validateString(description).map((fault) => fault.message?.trim() ?? '');

function schemaFaults(description: string): string[] {
  const document = XmlDocument.fromString(description);
  try {
    xsd.validate(document);
    return [];
  } catch (error) {
    return [String(error)];
  } finally {
    document.dispose();
  }
}

const faultsOf = (description: string) => [...schemaFaults(description), ...assertionFaults(description)];

describe('exported descriptions against the published schema and Schematron of GDTF', () => {
  it('finds no fault in any random type', () => {
    for (let seed = 1; seed <= 300; seed++) {
      const description = descriptionOf(randomType(seededRng(seed)));
      expect(schemaFaults(description), `seed ${seed}`).toEqual([]);
      // The assertions take most of a second for each file.
      if (seed <= 20) expect(assertionFaults(description), `seed ${seed}`).toEqual([]);
    }
  });

  it.each(GENERIC_TYPES.map((type) => [type.model, type] as const))('finds no fault in %s', (_model, type) => {
    expect(faultsOf(descriptionOf(type))).toEqual([]);
  });

  it.each(DEMO_TYPES)('finds no fault in $id', ({ revisions }) => {
    const [first, ...later] = revisions.map(({ type }) => descriptionOf(type));
    // The assertions take seconds for a large chart; what a later revision has more of is of the same kinds.
    expect(faultsOf(first ?? '')).toEqual([]);
    for (const each of later) expect(schemaFaults(each)).toEqual([]);
  });

  const sound = descriptionOf(randomType(seededRng(conditionSeed())));

  it.each([
    ['a break that is no number', /DMXBreak="1"/, 'DMXBreak="one"', /DMXBreak/],
    ['a geometry that is not there', /(<DMXChannel .*Geometry=)"[^"]*"/, '$1"Nowhere"', /key/i],
    ['an attribute that is not defined', /(<LogicalChannel Attribute=)"[^"]*"/, '$1"Undefined"', /key/i],
    ['a feature that is not there', /Feature="[A-Z]\w+\.\w+"/, 'Feature="No.Such"', /references Feature/],
    ['a link that leads nowhere', /ModeMaster="[^"]*"/, 'ModeMaster="Nowhere_Dimmer"', /references ModeMaster/],
    ['one channel twice', /<DMXChannel [\s\S]*?<\/DMXChannel>/, '$&$&', /multiple DMXChannel/],
    ['two weights', /<Properties>/, '$&<Weight Value="1"/><Weight Value="1"/>', /More than one Weight/],
  ])('would find %s', (_what, pattern, instead, fault) => {
    const broken = sound.replace(pattern, instead);
    expect(broken).not.toBe(sound);
    expect(faultsOf(broken).join('\n')).toMatch(fault);
  });
});

/** A seed whose type has a condition and a weight, so that every rule has something to bite on. */
function conditionSeed(): number {
  for (let seed = 1; ; seed++) {
    const description = descriptionOf(randomType(seededRng(seed)));
    if (/ModeMaster=/.test(description) && /<Weight/.test(description)) return seed;
  }
}
