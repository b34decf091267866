import { expect, test } from 'vitest';
import { NO_FARM } from '../../../server/sync/farm.ts';
import { HubRefused } from '../../../server/sync/line.ts';
import { type OfficeSaid, OfficesView } from '../../../shared/farm.ts';
import { testApp } from '../make/test-app.ts';
import { testBarn } from '../make/test-barn.ts';

const OFFICES: OfficesView = {
  offices: [{ office: 'o-1', name: 'Hill Practice', state: 'asks', since: '2027-04-12T12:00:00.000Z' }],
};

/** The routes of a kiosk whose hub answers so. */
async function kiosk(offices: (say: OfficeSaid | null) => Promise<OfficesView>) {
  const { app } = await testApp(null, testBarn(':memory:', undefined, { farm: { ...NO_FARM, offices } }));
  const ask = (method: 'GET' | 'POST', payload?: object) =>
    app.inject({
      method,
      url: '/api/farm/offices',
      headers: { host: 'localhost:4180' },
      ...(payload === undefined ? {} : { payload }),
    });
  return { ask };
}

test('the offices are told as the hub tells them, and what is said to one reaches the hub as it was said', async () => {
  const said: unknown[] = [];
  const { ask } = await kiosk(async (say) => {
    said.push(say);
    return OFFICES;
  });
  expect(OfficesView.parse((await ask('GET')).json())).toEqual(OFFICES);
  expect((await ask('POST', { office: 'o-1', reads: true })).json()).toEqual(OFFICES);
  expect(said).toEqual([null, { office: 'o-1', reads: true }]);
});

test.each([{}, { office: 'o-1' }, { office: 1, reads: true }, { office: 'o-1', reads: true, farm: 'dale' }])(
  'what is no word to an office is refused before the hub hears of it: %j',
  async (body) => {
    const { ask } = await kiosk(() => Promise.reject(new Error('the hub was asked')));
    const { statusCode, body: text } = await ask('POST', body);
    expect([statusCode, text.includes('the hub was asked')]).toEqual([400, false]);
  },
);

test('a hub that is not there, or does not do it, is told apart, and so is a kiosk that shares nothing', async () => {
  const gone = await kiosk(() => Promise.reject(new Error('the line is cut')));
  expect((await gone.ask('GET')).statusCode).toBe(502);
  const refuses = await kiosk(() =>
    Promise.reject(new HubRefused({ code: 'no-such-office', message: 'No such office asks.' })),
  );
  const answer = await refuses.ask('POST', { office: 'o-9', reads: true });
  expect([answer.statusCode, answer.json()]).toEqual([409, { message: 'No such office asks.' }]);
  const { app } = await testApp();
  const alone = await app.inject({ url: '/api/farm/offices', headers: { host: 'localhost:4180' } });
  expect([alone.statusCode, alone.json()]).toEqual([502, { message: 'this kiosk shares nothing' }]);
});
