import { SYRINGE_CATALOGUE } from '../../core/dosing/syringe.ts';
import { tagOwner } from '../../core/herd/tag-owner.ts';
import { pixelsPerMm } from '../../core/panel/panel.ts';
import type { EarView } from '../../shared/ear.ts';
import type { KeepingView } from '../../shared/keeping.ts';
import type { MachineView } from '../../shared/machine.ts';
import type { NetworkView } from '../../shared/network.ts';
import type { DeviceView, ShedView } from '../../shared/shed.ts';
import type { KioskState, PanelView, ProblemView } from '../../shared/state.ts';
import type { VoiceView } from '../../shared/voice.ts';
import type { BarnContext } from '../barn/barn-context.ts';
import { type Memory, syringesOnHand } from '../barn/memory.ts';
import { UNKNOWN_TAG_MS } from '../barn/shed-intents.ts';
import type { KioskConfig } from '../config/kiosk-config.ts';
import { herdView } from './animal-view.ts';
import { boardNow } from './board-view.ts';
import { cardView } from './card-view.ts';
import { checkView, scaleChecksView } from './check-view.ts';
import { dayBookView, offerView } from './dose-view.ts';
import { farmView } from './farm-view.ts';
import { jugView } from './jug-view.ts';
import { keptBy } from './kept.ts';
import { medicineViews } from './medicine-view.ts';
import { mixingView } from './mixing-view.ts';
import { liquidViews, packetViews, regimenViews } from './regimen-view.ts';
import { roundView } from './round-view.ts';
import { stockView } from './stock-view.ts';
import { syringeCheckRecordView, syringeCheckView } from './syringe-check-view.ts';
import { wormCheckView } from './test-view.ts';
import { rfc3339 } from './times.ts';

/** What of the state is not the barn's own. */
export interface Standing {
  readonly bootId: string;
  readonly demo: boolean;
  readonly practice: boolean;
  readonly problem: ProblemView | null;
  readonly devices: () => DeviceView[];
  readonly voice: () => VoiceView;
  readonly ear: () => EarView;
  readonly keeping: () => KeepingView;
  readonly machine: () => MachineView;
  readonly network: () => NetworkView;
}

const recentView = keptBy<BarnContext, KioskState['dayBook']>();

/** The whole state as the wire carries it. */
export function stateView(barn: BarnContext, standing: Standing): KioskState {
  const { memory, clock, config } = barn;
  const now = clock.now();
  const { phase } = memory.round;
  return {
    bootId: standing.bootId,
    now: rfc3339(now.wallMs),
    clockTrusted: clock.isTrusted(),
    clockFloor: rfc3339(clock.floorMs()),
    demo: standing.demo,
    practice: standing.practice,
    problem: standing.problem,
    safetyRead: memory.settings.safetyRead,
    firstStart: memory.settings.firstStart,
    panel: panelView(config.panel),
    face: memory.settings.face,
    language: memory.settings.language,
    weightUnit: memory.settings.weightUnit,
    timeZone: config.timeZone,
    platform: platformView(barn),
    bench: {
      link: barn.linkOf('bench'),
      live: memory.bench.live?.value ?? null,
      steady: memory.bench.steady !== null,
      division: memory.bench.division?.value ?? null,
    },
    wand: { link: barn.linkOf('wand') },
    jug: mixingView(memory, now.wallMs),
    check: checkView(memory),
    syringeCheck: syringeCheckView(memory),
    round: roundView(barn, now),
    offer:
      phase.step === 'offered' || phase.step === 'logging' ? offerView(phase.offer, memory.formulary) : null,
    card: phase.step === 'offered' ? cardView(phase.offer, syringesOnHand(memory), memory.formulary) : null,
    animals: herdView(barn),
    board: boardNow(barn),
    seasonRevision: memory.seasonRevision + barn.weatherImport.revision(),
    herdRevision: memory.herdRevision + barn.herdFile.revision(),
    wormCheck: wormCheckView(barn),
    jugs: memory.jugs.map((jug) => jugView(jug, now.wallMs, memory.formulary)),
    dayBook: recentView(barn, [memory.recent, memory.animals, memory.formulary], () =>
      dayBookView(memory.recent, memory.animals, memory.formulary),
    ),
    stock: stockView(barn),
    keeping: standing.keeping(),
    machine: standing.machine(),
    network: standing.network(),
    farm: farmView(barn),
    shed: shedView(barn, standing),
    voice: standing.voice(),
    ear: standing.ear(),
  };
}

function platformView({ memory, linkOf }: BarnContext): KioskState['platform'] {
  const { deck, round } = memory;
  // After the animal has stepped off, the weight stays shown for as long as its visit lasts.
  const visit = 'visit' in round.phase ? round.phase.visit : null;
  const held = deck.onSince === null ? (visit?.weight?.held ?? null) : deck.held;
  return {
    link: linkOf('platform'),
    live: deck.live?.value ?? null,
    held: held?.mass.value ?? null,
    uncertainty: held?.uncertainty.value ?? null,
    verdict: deck.verdict,
    division: deck.division?.value ?? null,
  };
}

function shedView(barn: BarnContext, standing: Standing): ShedView {
  const { memory, clock, config, setup } = barn;
  const { unknownTag, settings } = memory;
  const recent = unknownTag !== null && clock.now().uptimeMs - unknownTag.at < UNKNOWN_TAG_MS;
  return {
    devices: standing.devices(),
    setup: typeof setup === 'string' ? { step: 'closed', why: setup } : setup.view(),
    syringes: SYRINGE_CATALOGUE.map((syringe) => {
      const check = memory.syringeChecks.find(({ syringeId }) => syringeId === syringe.id);
      return {
        id: syringe.id,
        name: syringe.name,
        capacityMl: syringe.capacity.value,
        graduationMl: syringe.graduation.value,
        onHand: settings.syringeIds.includes(syringe.id),
        check: check === undefined ? null : syringeCheckRecordView(check),
      };
    }),
    checks: {
      platform: scaleChecksView(memory, 'platform', clock),
      bench: scaleChecksView(memory, 'bench', clock),
      everyDays: settings.scaleCheckDays,
      stops: settings.scaleCheckStops,
    },
    regimens: regimenViews(memory.formulary, memory.approvals, memory.retiredIds),
    medicines: medicineViews(memory.formulary, memory.ownIds, memory.retiredIds),
    vets: [...memory.vets],
    formularyTrouble: [...memory.formularyTrouble],
    packets: packetViews(memory.formulary, memory.retiredIds),
    liquids: liquidViews(memory.formulary, memory.retiredIds),
    people: config.people,
    person: settings.person,
    unknownTag: recent ? unknownTag.tag : null,
    unknownTagOf: recent ? lostBy(unknownTag.tag, memory.animals) : [],
  };
}

function lostBy(tag: string, animals: Memory['animals']): string[] {
  const owner = tagOwner(tag, animals);
  return owner.kind === 'wore' ? [...owner.animalIds] : [];
}

/** The panel as the wire carries it. */
export function panelView({ widthPx, heightPx, diagonalInches }: KioskConfig['panel']): PanelView {
  return { widthPx, heightPx, pxPerMm: pixelsPerMm(widthPx, heightPx, diagonalInches) };
}
