import { grams, massIn } from '../../core/quantity/mass.ts';
import { encodeSma } from './encode-sma.ts';
import { digitsOf, type Face, type Indication } from './indication.ts';
import type { Reply, SimScaleBody } from './sim-voice.ts';

const ABOUT = ['SMA:2/1.0', 'MFG:NONE', 'MOD:SIM', 'REV:1', 'END:'];

/** Answers the commands of the polled protocol, with its two dialogues; one ear for one connection. */
export function listenToSma(body: SimScaleBody): (command: string) => Reply {
  let about = 0;
  let information = 0;

  function line(lines: readonly string[], at: number): Uint8Array {
    return frame(lines[at] ?? '?');
  }
  function weigh(): Uint8Array {
    return encodeSma(body.shown(), body.face);
  }
  function pressed(button: 'tare' | 'clear' | 'zero'): Uint8Array {
    return body.press(button) ? weigh() : frame(`E1GM ----------${body.face.unit.padEnd(3)}`);
  }
  function answer(command: string): Uint8Array {
    switch (command) {
      case 'W':
      case 'P':
        return weigh();
      case 'H':
        return fine(body.shown(), body.face);
      case 'M':
        return asTare(encodeSma(body.tare(), body.face));
      case 'T':
        return pressed('tare');
      case 'C':
        return pressed('clear');
      case 'Z':
        return pressed('zero');
      case 'A':
        about = 0;
        return line(ABOUT, about);
      case 'B':
        about += 1;
        return line(ABOUT, about);
      case 'I':
        information = 0;
        return line(informationOf(body), information);
      case 'N':
        information += 1;
        return line(informationOf(body), information);
      default:
        return frame('?');
    }
  }
  return (command) => () => answer(command);
}

function informationOf({ face, capacity }: SimScaleBody): string[] {
  const { unit, division } = face;
  const step = massIn(division, unit);
  const decimals = Math.max(0, Math.ceil(-Math.log10(step)));
  const countBy = Math.round(step * 10 ** decimals);
  const most: Indication = {
    steps: Math.floor(capacity.value / division.value),
    moving: false,
    net: false,
    range: 'within',
  };
  const carries = `CAP:${unit.padEnd(3)}:${digitsOf(most, face)}:${countBy}:${decimals}`;
  return ['SMA:2/1.0', 'TYP:S', carries, 'CMD:HPTMC', 'END:'];
}

/** The weight with one digit more, as a kind in lower case. */
function fine(shown: Indication, face: Face): Uint8Array {
  const tenth = { ...face, division: grams(face.division.value / 10) };
  const text = Buffer.from(encodeSma({ ...shown, steps: 10 * shown.steps }, tenth)).toString('latin1');
  return Buffer.from(text.slice(0, 3) + text.charAt(3).toLowerCase() + text.slice(4), 'latin1');
}

function asTare(reply: Uint8Array): Uint8Array {
  const text = Buffer.from(reply).toString('latin1');
  return Buffer.from(`${text.slice(0, 1)} 1T ${text.slice(5)}`, 'latin1');
}

function frame(text: string): Uint8Array {
  return Buffer.from(`\n${text}\r`, 'latin1');
}
