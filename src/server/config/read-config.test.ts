import { describe, expect, it } from 'vitest';
import { readConfig } from './read-config.ts';
import { StartRefused } from './start-refused.ts';

describe('readConfig', () => {
  it('starts without any setting: embedded store, demo on, every address of the machine', () => {
    expect(readConfig({}, '/srv/rigs')).toEqual({
      port: 3000,
      host: '0.0.0.0',
      store: { kind: 'embedded', folder: '/srv/rigs/data' },
      demo: true,
      publicUrl: undefined,
      trustProxy: false,
      authSecret: undefined,
      attemptsPerMinute: 20,
    });
  });

  it('turns the demo off on a Postgres server unless asked for', () => {
    const url = 'postgresql://u:p@db.example:5432/rigs';
    expect(readConfig({ DATABASE_URL: url }, '/')).toMatchObject({ demo: false, store: { kind: 'postgres', url } });
    expect(readConfig({ DATABASE_URL: url, DEMO: '1' }, '/').demo).toBe(true);
    expect(readConfig({ DEMO: '0' }, '/').demo).toBe(false);
  });

  it('takes an empty setting as not set', () => {
    expect(readConfig({ PORT: '', DATABASE_URL: '', PUBLIC_URL: '' }, '/')).toEqual(readConfig({}, '/'));
  });

  it.each([
    ['PORT', 'eighty'],
    ['PORT', '70000'],
    ['PORT', '-1'],
    ['HOST', 'a b'],
    ['DATABASE_URL', 'mysql://db/rigs'],
    ['DATABASE_URL', 'rigs'],
    ['DEMO', 'yes'],
    ['PUBLIC_URL', 'rigs.example'],
    ['PUBLIC_URL', 'ftp://rigs.example'],
    ['TRUST_PROXY', 'true'],
    ['AUTH_SECRET', 'short'],
    ['SIGN_IN_ATTEMPTS', '0'],
  ])('refuses %s=%s in one sentence that names it', (name, value) => {
    expect(() => readConfig({ [name]: value }, '/')).toThrow(StartRefused);
    expect(() => readConfig({ [name]: value }, '/')).toThrow(new RegExp(`^${name} is .*it has to .*start again\\.$`));
  });

  it('never prints a secret', () => {
    expect(() => readConfig({ AUTH_SECRET: 'hunter2' }, '/')).not.toThrow(/hunter2/);
    expect(() => readConfig({ DATABASE_URL: 'postgre://u:hunter2@db/x' }, '/')).not.toThrow(/hunter2/);
  });
});
