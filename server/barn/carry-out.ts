import { unreachable } from '../../core/unreachable.ts';
import type { Intent, Refusal } from '../../shared/intent.ts';
import { UNASKED } from '../herd/herd-file.ts';
import type { BarnContext } from './barn-context.ts';
import { openNewBottle } from './bottle-intents.ts';
import { benchInCheck, setCheckRule, startCheck, startSyringeCheck } from './check-intents.ts';
import { setClock } from './clock-intents.ts';
import { setUpDevice, zeroScale } from './device-intents.ts';
import { correctEggCount, logEggCount, setEggMean } from './egg-intents.ts';
import { readApart } from './farm-intents.ts';
import { editHerd, leave, note, retag, retagVisual, score, takeBackScore } from './herd-intents.ts';
import { takeIn } from './import-intents.ts';
import { mergeRecords, partRecords } from './merge-intents.ts';
import { keepPresentation, keepRule, retireOwn } from './own-medicine-intents.ts';
import { correct, discardJug, give, giveGroup, readTag } from './round-intents.ts';
import { runScaleCheck } from './run-check.ts';
import { runMixing } from './run-mixing.ts';
import { runRound } from './run-round.ts';
import { forgetSyringeCheck, runSyringeCheck } from './run-syringe-check.ts';
import { seasonChanged, takeWeatherIn } from './season-intents.ts';
import { addPerson, removePerson, setPanel, setTimeZone } from './settling-intents.ts';
import {
  approve,
  beginPractice,
  enrol,
  goOnFirstStart,
  keep,
  setLanguage,
  setPerson,
  setSyringes,
  withdrawApproval,
} from './shed-intents.ts';
import { countStock, receiveStock, throwStockAway } from './stock-intents.ts';
import { endTest, planTest } from './test-intents.ts';
import { sayWeight, weightOffFeed } from './weight-intents.ts';
import { setWormRule } from './worm-intents.ts';

/** How a person asked for something, where the record has a place for it. */
export type AskedBy = 'screen' | 'voice';

/** Carries out one intent; returns why not, or `null`. Throws when the disk refuses. */
export function carryOut(barn: BarnContext, intent: Intent, by: AskedBy): Refusal | null {
  switch (intent.type) {
    case 'mix-start':
      if (benchInCheck(barn.memory)) return 'bench-in-use';
      if (barn.memory.retiredIds.has(intent.packetId)) return 'no-such-packet';
      return runMixing(barn, { type: 'start', packetId: intent.packetId });
    case 'mix-amount':
      return runMixing(barn, { type: 'amount', amount: intent.amount });
    case 'mix-mode':
      return runMixing(barn, { type: 'mode', mode: intent.mode });
    case 'mix-look':
      return runMixing(barn, { type: 'look', perPacketMl: intent.perPacketMl });
    case 'mix-dilution':
      return runMixing(barn, { ...intent, type: 'dilution' });
    case 'mix-water':
      return runMixing(barn, { type: 'water-temperature', celsius: intent.celsius });
    case 'mix-jug-placed':
      return runMixing(barn, { type: 'jug-placed' });
    case 'mix-jug-is-empty':
      return runMixing(barn, { ...intent, type: 'jug-is-empty' });
    case 'mix-lot':
      return runMixing(barn, { type: 'lot', lotId: intent.lotId });
    case 'mix-poured':
      return runMixing(barn, { type: 'poured', deliberate: intent.deliberate ?? false });
    case 'mix-powder-in':
      return runMixing(barn, { type: 'powder-in', deliberate: intent.deliberate });
    case 'mix-dissolved':
      return runMixing(barn, { type: 'dissolved' });
    case 'mix-in-service':
      return runMixing(barn, { type: 'in-service' });
    case 'mix-cancel':
      return runMixing(barn, { type: 'cancel' });
    case 'open-bottle':
      return openNewBottle(barn, intent);
    case 'jug-discard':
      return discardJug(barn, intent);
    case 'read-tag':
      return readTag(barn, intent);
    case 'pick-animal':
      return runRound(barn, { type: 'identified', animalId: intent.animalId, via: by });
    case 'correct':
      return correct(barn, intent);
    case 'take-jug':
    case 'prove-jug':
    case 'prove-on-bench':
    case 'put-jug-down':
    case 'follow-up':
    case 'accept':
    case 'skip':
    case 'answer':
    case 'next':
      return runRound(barn, intent);
    case 'give':
      return give(barn, intent, by);
    case 'give-group':
      return giveGroup(barn, intent);
    case 'enrol':
      return enrol(barn, intent);
    case 'edit-animal':
      return editHerd(barn, intent);
    case 'retag':
      return retag(barn, intent);
    case 'retag-visual':
      return retagVisual(barn, intent);
    case 'leave-herd':
      return leave(barn, intent);
    case 'merge-animals':
      return mergeRecords(barn, intent);
    case 'part-animals':
      return partRecords(barn, intent);
    case 'score':
      return score(barn, intent);
    case 'take-back-score':
      return takeBackScore(barn, intent);
    case 'say-weight':
      return sayWeight(barn, intent);
    case 'weight-off-feed':
      return weightOffFeed(barn, intent);
    case 'note-animal':
      return note(barn, intent);
    case 'import-read':
      return barn.herdFile.read(intent.file, { sayings: UNASKED, herd: barn.memory.animals });
    case 'import-judge':
      return barn.herdFile.judge({
        sayings: { dateOrder: intent.dateOrder, species: intent.species },
        herd: barn.memory.animals,
      });
    case 'import-accept':
      return takeIn(barn, intent.preview);
    case 'import-drop':
      return barn.herdFile.drop();
    case 'weather-read':
      return barn.weatherImport.read(intent.file, null);
    case 'weather-judge':
      return barn.weatherImport.judge(intent.dateOrder);
    case 'weather-accept':
      return takeWeatherIn(barn, intent.preview);
    case 'weather-drop':
      return barn.weatherImport.drop();
    case 'set-latitude':
      return seasonChanged(barn, () => keep(barn, 'latitude', intent.degrees));
    case 'set-worm-season':
      return seasonChanged(barn, () => keep(barn, 'wormSeason', intent.season));
    case 'set-worm-rule':
      return setWormRule(barn, intent);
    case 'set-egg-mean':
      return setEggMean(barn, intent.eggsPerGram);
    case 'stock-receive':
      return receiveStock(barn, intent);
    case 'stock-throw-away':
      return throwStockAway(barn, intent);
    case 'stock-count':
      return countStock(barn, intent);
    case 'set-currency':
      return keep(barn, 'currency', intent.currency);
    case 'log-egg-count':
      return logEggCount(barn, intent);
    case 'correct-egg-count':
      return correctEggCount(barn, intent);
    case 'plan-test':
      return planTest(barn, intent);
    case 'end-test':
      return endTest(barn, intent);
    case 'approve':
      return approve(barn, intent);
    case 'withdraw-approval':
      return withdrawApproval(barn, intent);
    case 'keep-presentation':
      return keepPresentation(barn, intent);
    case 'keep-rule':
      return keepRule(barn, intent);
    case 'retire-own':
      return retireOwn(barn, intent.ownId);
    case 'set-syringes':
      return setSyringes(barn, intent);
    case 'check-start':
      return startCheck(barn, intent);
    case 'check-weight':
      return runScaleCheck(barn, { type: 'weight', weightId: intent.weightId });
    case 'check-next':
      return runScaleCheck(barn, { type: 'next' });
    case 'check-skip':
      return runScaleCheck(barn, { type: 'skip' });
    case 'check-cancel':
      return runScaleCheck(barn, { type: 'cancel' });
    case 'set-check-rule':
      return setCheckRule(barn, intent);
    case 'syringe-check-start':
      return startSyringeCheck(barn, intent);
    case 'syringe-check-next':
      return runSyringeCheck(barn, { type: 'next' });
    case 'syringe-check-leave-out':
      return runSyringeCheck(barn, { type: 'leave-out' });
    case 'syringe-check-cancel':
      return runSyringeCheck(barn, { type: 'cancel' });
    case 'syringe-check-forget':
      return forgetSyringeCheck(barn, intent.syringeId);
    case 'set-clock':
      return setClock(barn, intent);
    case 'set-person':
      return setPerson(barn, intent);
    case 'add-person':
      return addPerson(barn, intent);
    case 'remove-person':
      return removePerson(barn, intent);
    case 'set-panel':
      return setPanel(barn, intent);
    case 'set-time-zone':
      return setTimeZone(barn, intent);
    case 'set-face':
      return keep(barn, 'face', intent.face);
    case 'set-language':
      return setLanguage(barn, intent.language);
    case 'set-weight-unit':
      return keep(barn, 'weightUnit', intent.unit);
    case 'set-paper':
      return keep(barn, 'paper', intent.paper);
    case 'first-start':
      return goOnFirstStart(barn, intent);
    case 'safety-read':
      return keep(barn, 'safetyRead', true);
    case 'set-voice':
      return keep(barn, 'voice', intent.voice);
    case 'set-ear':
      return keep(barn, 'ear', intent.ear);
    case 'wipe-recordings':
      barn.wipeRecordings();
      return null;
    case 'try-voice':
      barn.tryVoice(intent.earcon);
      return null;
    case 'ports-look':
    case 'device-listen':
    case 'device-try':
    case 'device-lines':
    case 'device-patterns':
    case 'device-prove':
    case 'device-no-tare':
    case 'device-division':
    case 'device-keep':
    case 'device-drop':
    case 'device-remove':
      return setUpDevice(barn, intent);
    case 'zero':
      return zeroScale(barn, intent.role);
    case 'tray':
      if (barn.tray === null) return 'demo-only';
      return barn.tray(intent.action, barn.memory) ? null : 'no-such-animal';
    case 'back-up-now':
      return barn.backUpNow() ? null : 'no-backup-place';
    case 'set-network':
      return barn.network.turn(intent.on);
    case 'pair-device':
      return barn.network.pair(intent.right);
    case 'pair-stop':
      return barn.network.stopPairing();
    case 'revoke-device':
      return barn.network.revoke(intent.deviceId);
    case 'forget-pin':
      return barn.network.forgetPin(intent.person);
    case 'practice-begin':
      return beginPractice(barn);
    case 'practice-end':
      if (barn.endPractice === null) return 'wrong-state';
      barn.endPractice();
      return null;
    case 'join-farm':
      return barn.farm.join();
    case 'leave-farm':
      return barn.farm.leave();
    case 'read-apart':
      return readApart(barn, intent);
    case 'leave-demo':
      if (barn.leaveDemo === null) return 'demo-only';
      barn.leaveDemo();
      return null;
    default:
      return unreachable(intent);
  }
}
