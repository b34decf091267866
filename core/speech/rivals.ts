import { ALWAYS, NEXT, NOT_GIVEN, ON_BENCH, SCORES, SKIPS, UNDO } from './fixed-phrases.ts';
import type { Grammar } from './jsgf.ts';
import type { Dictionary } from './pronounce.ts';
import { DIGIT_WORDS, READ_BACK, TEEN_WORDS, TENS_WORDS } from './read-back.ts';
import { WAKE_WORDS } from './wake.ts';

/**
 * Words of everyday talk, none of them a word of any command: what a sound is held against before it may be a
 * command. They were chosen for being common, and for sounding like the words of commands.
 */
const WORDS = `
a about above across after again all along always and another any are around ask at away
back bad barn be bean because bed been before behind being best better big bit bite black blood blue bone both bowl
box boy bread break bring brother brown brush bucket build but buy by call came can cannot cap car card care carry cat
catch cheese chicken child clean clear clip close cloth coal cold come cook corn corner could count cow cream cross cry
cup cut dad dark day dead deep did dinner dirt dirty do doctor does dog done door down draw dress drink drive driven
driver drop dry duck each early easy eat edge egg empty end enough evening ever every eye face fall family far
farm farmer fast fat feed feel feet fell fence few field fill find fine finger fire first fish fix floor flower fly
food foot for forgiven found fresh friend from front full fun game gate gave get girl give giving glass glove go gone
good got grain grass great green grey ground grow had hair half hand hang happy hard has hat have hay he head hear
heart heavy held hello help her here high hill him his hit hold hole hope horn horse hot hour house how hurt
ice if in inside into iron it job join joke joint jump just keep kept key kick kid kind kitchen knee knife
knot know lady lamb lame land large late laugh lead leave left leg less let letter lie life lift light like
line list listen little live lock log long look loose lost lot loud love low lunch made mail make man many mark
market may me mean meat meet men might mile milk mind mine minute money month moon more morning mother mouth move
much mud must my name near neck need neighbour never new news nice night nobody noise north nose nothing
nothing now oats of off often oil okay old on only open or order other our out over own pain paint
paper part past pay pen people phone pick piece pig pink place plant play please pocket power price pull push
put quick quiet quite rain ram ran read ready record red rest rice right ring river road roof room rope
round rub run sack said salt same save saw scream screw sea seat see seen sell send set shall she sheep shelf
shirt shoe shop short should shoulder show shut side silly sister sit sky sleep slip slow small smell snow so
soap soft sold some somebody song soon sore sorry sound spring stand star stay step stick still stone store storm
straight straw street strong such sugar summer sun sure sweep sweet table tail talk tall tea teeth tell than thank
that the their them then there these they thin thing think this those thought through throw tied time tired today
together told tomorrow tonight too took tool top touch town tractor trailer tree trim truck try turn under up upon us use very
vet wait walk wall want warm was wash watch water way we weak wear weather week weigh well went were wet what wheel
when where which while white who why wide wife wild will wind window winter wish with woman wood wool word work
world worm worse write wrong yard year yellow yes yesterday yet you young your
alive arrive crime dive drives even fern fife flour forest free heaven hive hundred jive knives lives mice nice night noon
oven pint points price pointed ride scene seen shed's sex site sixth size slice soar stock tea tent than three's
tie tiny true tried wonder wander knighted needle naked notice skin skid school escape sleet slept
`;

/** A grammar of everyday words in any order, without those that phrases are made of; words no dictionary holds are left out. */
export function rivalGrammar(dictionary: Dictionary): Grammar {
  const taken = new Set([
    ...[...ALWAYS, ...SKIPS, ...SCORES, NEXT, UNDO, NOT_GIVEN, ON_BENCH].flatMap(({ words }) => words),
    ...WAKE_WORDS,
    ...[
      ...DIGIT_WORDS,
      ...TEEN_WORDS,
      ...TENS_WORDS,
      'oh',
      READ_BACK.first,
      READ_BACK.last,
      'point',
      'tag',
      'animal',
      'number',
    ],
  ]);
  const pronunciations = new Map<string, readonly string[]>();
  for (const word of WORDS.trim().split(/\s+/)) {
    const sounds = taken.has(word) ? [] : dictionary(word);
    if (sounds.length > 0) pronunciations.set(word, sounds);
  }
  const jsgf = `#JSGF V1.0;\ngrammar rivals;\npublic <rivals> = (${[...pronunciations.keys()].join(' | ')})+;\n`;
  return { jsgf, pronunciations, guessed: [], unsayable: [] };
}
