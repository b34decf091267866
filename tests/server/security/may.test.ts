import { describe, expect, test } from 'vitest';
import { whyNotIntent, whyNotRoute } from '../../../server/security/may.ts';
import { BOARD, STRANGER, type Visitor } from '../../../server/security/visitor.ts';
import type { Intent } from '../../../shared/intent.ts';
import type { DeviceRight } from '../../../shared/network.ts';
import { INTENTS } from '../../shared/make.ts';
import { testApp } from '../make/test-app.ts';

const TYPES = Object.keys(INTENTS) as Intent['type'][];
const device = (right: DeviceRight, person: string | null = 'Wren'): Visitor => ({
  kind: 'device',
  id: 'd',
  right,
  person,
});
const allowed = (visitor: Visitor) => TYPES.filter((type) => whyNotIntent(visitor, type) === null);

describe('of all intents', () => {
  test('the board may all, a stranger and a device that follows none', () => {
    expect(allowed(BOARD)).toEqual(TYPES);
    expect([allowed(STRANGER), allowed(device('follow'))]).toEqual([[], []]);
  });

  test('nobody may any without a person at work, but the board', () => {
    expect([allowed(device('act', null)), allowed(device('set-up', null))]).toEqual([[], []]);
  });

  test('who sets up may all that who acts may, and more', () => {
    const [act, setUp] = [allowed(device('act')), allowed(device('set-up'))];
    expect(act.filter((type) => !setUp.includes(type))).toEqual([]);
    expect(act).toEqual(expect.arrayContaining(['give', 'correct', 'score']));
    expect(setUp.filter((type) => !act.includes(type))).toEqual(
      expect.arrayContaining(['approve', 'keep-rule', 'device-keep', 'import-accept']),
    );
  });

  test('those that let others in, or listen, are the board’s alone', () => {
    const boards = TYPES.filter((type) => whyNotIntent(device('set-up'), type) === 'board-only');
    expect(boards.sort()).toEqual([
      'add-person',
      'first-start',
      'forget-pin',
      'join-farm',
      'leave-demo',
      'leave-farm',
      'pair-device',
      'pair-stop',
      'practice-begin',
      'practice-end',
      'remove-person',
      'revoke-device',
      'safety-read',
      'set-clock',
      'set-ear',
      'set-face',
      'set-network',
      'set-panel',
      'set-person',
      'wipe-recordings',
    ]);
  });
});

describe('of all routes', () => {
  test('a stranger may the page and the way to be paired, nothing else; who follows changes nothing', async () => {
    const { app } = await testApp();
    await app.ready();
    const routes = routesIn(app.printRoutes({ commonPrefix: false }));
    expect(routes.length).toBeGreaterThan(40);
    const open = (visitor: Visitor) =>
      routes
        .filter(([method, url]) => whyNotRoute(visitor, method, url) === null)
        .map((each) => each.join(' '));
    expect(open(STRANGER).sort()).toEqual(['GET /api/session', 'HEAD /api/session', 'POST /api/pair']);
    expect(open(device('follow')).filter((each) => !/^(GET|HEAD) /.test(each))).toEqual([
      'POST /api/intents',
      'POST /api/pair',
    ]);
    expect(open(device('set-up')).length).toBeLessThan(open(BOARD).length);
    expect(open(BOARD).length).toBe(routes.length);
  });
});

/** The routes of a printed tree, in which each line hangs from one that is four signs further left. */
function routesIn(tree: string): [string, string][] {
  const above: string[] = [];
  return tree.split('\n').flatMap((line) => {
    const [, indent = '', part = '', , methods = ''] = /^(.*?)[├└]── ([^ ]*)( \((.*)\))?$/u.exec(line) ?? [];
    above.length = indent.length / 4;
    const url = `${above.join('')}${part}`;
    above.push(part);
    return methods === '' ? [] : methods.split(', ').map((method): [string, string] => [method, url]);
  });
}
