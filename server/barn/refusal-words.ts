import type { Refusal } from '../../shared/intent.ts';
import type { ScreenLanguage } from '../../shared/language.ts';
import { REFUSAL_WORDS_ES } from './refusal-words-es.ts';

/** What each refusal means and what to do about it, in plain words. */
export const REFUSAL_WORDS: Readonly<Record<Refusal, string>> = {
  'unknown-intent':
    'The kiosk does not know this request. Nothing was done; GET /api/schema lists what it knows.',
  'bad-input': 'The request is not of the right form. Nothing was done; GET /api/schema tells the form.',
  'wrong-state':
    'That does not fit what is on the screen now. Nothing was done; look at the screen and choose again.',
  'id-reused': 'This id was used for another request. Nothing was done; send it again under a new id.',
  'no-such-jug': 'There is no such jug. Choose one that is in service.',
  'jug-out-of-life': 'This jug is past its use-by, empty or poured away. Mix a new one.',
  'not-this-jug': 'That is not the jug being asked about. Look at the number on the jug in your hand.',
  'not-an-extra':
    'This medicine is no extra of the one just given. Finish this animal, then take it in hand.',
  'jug-not-in-hand': 'Take this jug in hand at the platform first, with nobody standing there.',
  'ask-open': 'Something must be looked at first for this animal. Read it, then hold the button.',
  'group-changed': 'The group, a weight or a syringe is another by now. Look at the dose anew.',
  'more-than-drawn':
    'That is as much as was drawn, or more. Enter what the marks show is still in the syringe.',
  'needs-held-press':
    'Another jug is in service that might be the one in your hand. Check the number and hold the button.',
  'no-such-animal': 'There is no such animal here. Enrol it at Shed first.',
  'lost-tag': 'An animal here lost this tag once. Look who wears it now, and pick that animal on the screen.',
  'no-such-tag': 'This tag belongs to no animal yet. Enrol the animal at Shed and give it the tag.',
  'tag-refused':
    'This is not an animal tag number: 15 digits, a country or maker code from 001 to 998, and a number that fits.',
  'tag-in-use': 'Another animal wears this tag already. Check both ears before going on.',
  'name-in-use': 'Another animal has this name or number. Choose a different one.',
  'not-one-animal': 'These two records cannot be one animal: their species differ. Choose another animal.',
  'merge-undecided': 'The two records say different things. Choose which is right, then hold the button.',
  'not-merged': 'These two records are not merged. Open the animal again and look.',
  'in-round':
    'One of the two is at the platform, or its dose waits for an answer. Finish that first, then come back.',
  'both-in-test':
    'Both records were sampled as two animals in one worm test. Merged, its result would change; nothing was done.',
  'animal-gone': 'This animal has left the farm. Its record is kept and is not changed any more.',
  'not-in-milk': 'Its milk is not used now. Tap “Milk used” first.',
  'females-only': 'Only a female is in milk, bred or gives birth. Set what it is first.',
  'day-in-future': 'That day has not come yet. Choose today or a day before.',
  'day-too-long-ago': 'No animal lives that long. Choose a later day.',
  'before-birth': 'That is before its birth. Set right whichever day is wrong.',
  'same-tag': 'It wears this tag already. Wave the new one.',
  'nothing-scored': 'Nothing was scored. Tap what you see, then log it.',
  'photo-too-large': 'That photo is too large. Send one of at most 300 kB.',
  'not-a-photo': 'That is no whole JPEG or WebP picture. Take it once more.',
  'no-such-photo': 'The kiosk has no such photo. Take it once more.',
  'no-such-score': 'There is no such score any more. Look at the animal again.',
  'no-such-weighing': 'The animal has no such weight. Look at its growth and choose again.',
  'threshold-out-of-range':
    'That threshold would treat all or none. Choose one within the bounds the screen shows.',
  'not-scored-so': 'That score is not for this species. Leave it out.',
  'no-such-file': 'There is no such file in the import folder. Put it there and look again.',
  'file-too-large': 'This file is too large: 64 MB for a herd, 4 MB for weather. Divide it into parts.',
  'no-such-preview': 'That preview does not stand any more. Read the file again.',
  'preview-outdated':
    'An animal of the file was added since the preview was made. Nothing was written; read the file again.',
  'nothing-to-take-in': 'No row of the file is good. Nothing was written; mend the file and read it again.',
  'no-such-caution': 'That caution does not stand any more. Look at the screen again.',
  'cannot-pass-stop': 'This is a stop: it cannot be passed here. Do what it says, or skip the animal.',
  'offer-ended': 'This dose is no longer offered. If it was given, say so where the screen asks.',
  'platform-not-ready': 'The platform shows nothing now. Wait until its lamp says ready and weigh again.',
  'no-such-packet': 'There is no such packet in the formulary.',
  'no-such-lot': 'There is no such lot in the stock. Choose one of those shown.',
  'lot-expired':
    'The month printed on this lot is over, and a label says not to use it after. Take another lot; throw this one away.',
  'more-than-on-hand': 'There is less of this lot than that. Count it anew first.',
  'temperature-out-of-range':
    'Water between 1 and 40 °C can be weighed to a strength. Choose the temperature again.',
  'bench-not-ready': 'The bench scale shows nothing now. Check its cable and wait until its lamp says ready.',
  'bench-moving': 'The bench scale has not come to rest. Take your hands off and wait a second.',
  'no-jug-on-scale': 'The bench scale is empty. Put the jug on it first.',
  'scale-too-coarse':
    'The bench scale counts in steps too large to weigh this mix well enough. Mix more at once, or use a finer scale.',
  'too-little-water': 'There is too little water in the jug. Pour on until the mark is reached.',
  'tared-mid-way': 'The scale was tared in the middle of the work. Start again.',
  'no-such-amount': 'That much powder is not mixed in one jug. Choose one of the amounts shown.',
  'stronger-than-known':
    'Nothing tells that so much powder dissolves in so little water. Choose a larger volume.',
  'too-weak':
    'That is more than eight times the water of its packet: a dose would be a drink. Look at the unit and the decimal point.',
  'far-from-label':
    'That is far from the packet’s own volume. Look at the unit and the decimal point; hold the button if it is meant.',
  'holds-mix': 'This jug weighs as one in service with its mix in it. Take it off and use an empty one.',
  'no-such-vessel': 'There is no such jug. Choose one of those shown.',
  'needs-held-word': 'Look into the jug. If it is empty and dry, hold the button.',
  'far-too-much-water':
    'That is far more water than planned. Empty the jug and pour again, or hold the button: doses follow what is in.',
  'jug-not-back': 'The jug was lifted or the scale was touched. Do first what the screen says.',
  'no-powder-seen': 'The scale saw no powder arrive. Put it into the jug first.',
  'powder-far-off':
    'That is far from the powder that was planned. Add to it, or hold the button: doses follow what is in.',
  'jug-weight-unknown':
    'What this jug weighs empty was never learned, so the scale cannot prove it. Read its number and date, then hold.',
  'jug-weighs-otherwise': 'That is not this jug, or not what should be left in it.',
  'jugs-weigh-alike':
    'Two jugs of this medicine would weigh the same now. Read the number and the date, then hold the button.',
  'no-such-weight': 'This scale is not checked with such a weight. Pick one of those shown.',
  'weight-too-light': 'This weight is too light to tell anything on this scale. Pick a heavier one.',
  'scale-not-ready': 'The scale shows nothing now. Check its cable and wait until its lamp says ready.',
  'scale-moving': 'The scale has not come to rest. Take your hands off and wait a second.',
  'scale-tared': 'The scale is in net mode. Set it to gross, then go on.',
  'not-at-zero': 'The scale does not stand at zero. Clear it and press zero on the scale.',
  'nothing-on-scale': 'There is too little on the scale. Put the weight on it first.',
  'weight-still-on': 'The weight is still on the scale. Take it off first.',
  'bench-in-use': 'The bench scale is in use for another job. Finish or stop that first.',
  'no-such-mark': 'This syringe has no such mark.',
  'too-coarse-for-syringe':
    'The bench scale counts in steps too large to tell how well this syringe measures.',
  'nothing-delivered': 'The scale saw no whole delivery arrive. Empty the syringe into the cup, then go on.',
  'more-than-one-delivery': 'More came in than one delivery. Leave this one out and go on with the next.',
  'not-checked': 'This syringe has no check that could be taken back: it counts as its catalogue says.',
  'no-such-count': 'There is no such egg count. Look at the list again.',
  'no-such-test': 'There is no such test. Look at the list again.',
  'test-ended': 'This test has come to its end. Plan a new one after the next round.',
  'not-in-test': 'This animal has no sample at this stage of the test. Choose one of those shown.',
  'already-counted':
    'A count of this animal is logged already. To change it, take that one back in the list of egg counts.',
  'one-animal-a-sample': 'In a test each sample is of one animal. Count them one by one.',
  'other-factor':
    'The others of this sampling were counted at another factor. Count this one at the same, or take those back.',
  'not-whole-dose':
    'Not all of these had a whole dose of it, weighed, in the last day. Look at the list again.',
  'needs-untreated':
    'Without a sample before, at least two untreated animals are needed to hold the treated against.',
  'already-in-test': 'These doses are in a test already. Open that one.',
  'no-such-treatment': 'There is no such row in the day book.',
  'already-corrected': 'This row was already taken back as not given.',
  'no-such-bottle': 'The formulary has no such liquid. Add it at Shed, or choose another.',
  'bottle-expired': 'The month printed on this bottle is over. Do not use it.',
  'no-such-regimen': 'The formulary has no such rule.',
  'needs-veterinarian': 'This use is not on the label: it needs a veterinarian’s direction.',
  'needs-rate': 'No source gives a rate for this rule. Enter the rate the veterinarian gave, then approve.',
  'rate-not-needed':
    'This rule has a rate with a source. A rate of the veterinarian’s own is a rule of its own: add one at Shed.',
  'no-such-medicine': 'The formulary has no such medicine. Choose one of those shown.',
  'contradicts-itself':
    'What was entered contradicts itself. Look at the label again and enter the figure that is wrong.',
  'already-there': 'That is there already, with the same figures. Nothing was added.',
  'medicines-unreadable':
    'The file medicines.json cannot be read, so nothing was added to it. Mend it as Shed, Dose rules, says.',
  'not-our-own': 'Only what this farm added can be taken out of use, and only once.',
  'still-approved': 'This rule is approved. Withdraw the approval first, then take it out of use.',
  'still-in-service':
    'A jug or bottle of it may still be in use. Use it up or pour it away first, then take it out of use.',
  'no-such-syringe': 'The catalogue has no such syringe.',
  'no-such-person': 'No such person works here by the configuration.',
  'person-known': 'This name is here already. Tap it, or spell another.',
  'too-many-people': 'Twelve people are the most. Take one out first.',
  'last-person': 'Somebody has to work here. Add another name first.',
  'no-such-panel':
    'No panel has this size. Hold the card to the glass and make the drawing as wide as it is.',
  'no-such-zone': 'This kiosk does not know that time zone. Choose another city.',
  'work-waits':
    'Work waits here: answer what is open, put the jug down and let the platform stand empty, then practise.',
  'only-for-real': 'The demo keeps this as it is. Use real scales first, at Shed, Devices.',
  'time-before-program':
    'This kiosk was made after that day. Look at the day and the year, and set the time again.',
  'time-not-kept':
    'This board does not tell how long it has been running. Set its clock on the board itself.',
  'server-knows-time':
    'The network sets this clock, and it says another time. Nothing was changed; look at the time you set.',
  'demo-only': 'This exists only in the demo.',
  'not-in-demo':
    'The demo has simulated devices. Hold “Use real scales” at Shed, Devices, to set up real ones.',
  'set-by-environment':
    'The BYRESIDE_ variables of the start command set the devices. Take them out there and start again.',
  'port-in-use':
    'Another device of this kiosk uses that port. Choose a different one, or remove that device.',
  'no-such-proposal': 'There is no such proposal. Look at the screen and choose again.',
  'no-such-division':
    'What the scale has shown does not lie on such steps. Choose one of those that are offered.',
  'no-plain-lines':
    'It sends no lines that could be shown. In the menu of the scale, set it to send continuously.',
  'no-pattern-yet':
    'No reading is found yet. Put a weight on and take it off, slowly, and let it rest between.',
  'not-proved':
    'It is not proved yet. Put a known weight on, or wave a tag, until the screen says it is right.',
  'tare-word-needed':
    'This format does not tell gross from net. Hold the button only if nobody ever takes a tare on this scale.',
  'bench-only':
    'This format does not tell gross from net, so this scale cannot weigh animals. Set another format on the scale.',
  'no-zero-command': 'This scale takes no zero from the kiosk. Press zero on the scale itself.',
  'something-on-scale': 'Something stands on the scale. Take it off first, then zero.',
  'no-backup-place': 'There is nowhere to copy to. Plug a memory stick in and wait a few seconds.',
  'no-invitation': 'There is no invitation of a hub here. Plug in the stick it was written to.',
  'no-such-alarm': 'That was read already.',
  'follows-only': 'This screen only follows. Do it at the kiosk itself.',
  'not-paired': 'This device is not paired. At the kiosk: Shed, People, Phones.',
  'needs-pin': 'This screen only follows until you say who you are: tap “Work here” and your PIN.',
  'needs-set-up': 'This device may not set the kiosk up. Do it at the kiosk, or pair it anew for that.',
  'board-only': 'This is done at the kiosk itself.',
  'network-off': 'Other devices cannot reach the kiosk now. Turn that on first.',
  'network-set-by-file': 'The file kiosk.json turns this on. Take "network", "on" out of it and start again.',
  'access-unreadable':
    'The file access.json in the network folder cannot be read, so nobody is let in. Restore it, or delete it to begin anew, then start again.',
  'too-many-devices': 'So many devices are paired already. Remove one that is not used.',
  'no-such-device': 'That device is not paired any more.',
  'not-configured':
    'The kiosk’s configuration cannot be read, so nothing can be done. The screen says what to mend.',
  'not-written':
    'The disk did not take the record, so nothing was logged. Free the disk or check the card, then press again.',
};

/** What a refusal means, in words of a language. */
export function refusalWords(code: Refusal, language: ScreenLanguage): string {
  return { en: REFUSAL_WORDS, es: REFUSAL_WORDS_ES }[language][code];
}
