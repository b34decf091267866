import { buildApp } from '../../../server/app.ts';
import type { EarPage } from '../../../server/ear/page-microphones.ts';
import type { House } from '../../../server/house.ts';
import { stateView } from '../../../server/view/state-view.ts';
import type { MicrophoneMessage } from '../../../shared/ear.ts';
import type { ProblemView } from '../../../shared/state.ts';
import { closedNetwork } from './closed-network.ts';
import { quietMachine, quietSpeaker, quietStanding } from './quiet.ts';
import { type TestBarn, testBarn } from './test-barn.ts';

/** What the hearing of a test app was told by a page. */
export interface Heard {
  readonly page: EarPage;
  readonly message?: MicrophoneMessage;
  readonly frame?: Uint8Array;
  readonly gone?: true;
}

/** A web server around a test barn, without a port; it has no pages unless the folder of them is given. */
export async function testApp(
  problem: ProblemView | null = null,
  test: TestBarn = testBarn(),
  kioskFolder: string | null = null,
  network = closedNetwork(),
) {
  const speaker = quietSpeaker(test.barn.context);
  const standing = quietStanding(test.barn.context, {
    problem,
    voice: speaker.view,
    network: () => network.view(),
  });
  const heard: Heard[] = [];
  const house: House = {
    barn: test.barn,
    standing,
    speaker,
    hearing: {
      told: (page, message) => heard.push({ page, message }),
      sound: (page, frame) => heard.push({ page, frame }),
      gone: (page) => heard.push({ page, gone: true }),
    },
    network,
    pages: { told: () => {}, gone: () => {} },
    machine: quietMachine,
    state: () => stateView(test.barn.context, standing),
    log: () => {},
    stop: async () => {},
  };
  const app = await buildApp(house, '127.0.0.1', kioskFolder);
  return { app, test, house, heard };
}

/** Posts an intent (or what pretends to be one) the way a page of this server would. */
export function post(app: Awaited<ReturnType<typeof testApp>>['app'], payload: unknown) {
  return app.inject({
    method: 'POST',
    url: '/api/intents',
    headers: { host: 'localhost:4180', 'content-type': 'application/json' },
    payload: typeof payload === 'string' ? payload : JSON.stringify(payload),
  });
}
