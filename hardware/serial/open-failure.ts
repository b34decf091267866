/** Why a port did not open. */
export type OpenFailureCode = 'not-found' | 'no-permission' | 'in-use' | 'not-serial' | 'other';

const REMEDIES: Readonly<Record<OpenFailureCode, string>> = {
  'not-found': 'Nothing is plugged in under this name: check the cable and the adapter.',
  'no-permission':
    'This user may not open the port: install the device rules, or join the group that owns it.',
  'in-use': 'Another program holds the port: close it there.',
  'not-serial': 'This name is not a serial port: choose another in the Shed.',
  other: 'The port does not open: pull the adapter out and plug it in again.',
};

/** A port that did not open: `code` for programs, `remedy` as one sentence for the keeper, the library's error as `cause`. */
export class OpenFailure extends Error {
  override readonly name = 'OpenFailure';
  readonly code: OpenFailureCode;
  readonly remedy: string;

  constructor(code: OpenFailureCode, path: string, cause?: unknown) {
    super(`cannot open ${path}: ${code}`, { cause });
    this.code = code;
    this.remedy = REMEDIES[code];
  }
}
