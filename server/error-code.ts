/** The code by which Node, SQLite or a library names an error, such as "ENOSPC"; empty where it carries none. */
export function errorCode(error: unknown): string {
  return error instanceof Error && 'code' in error ? String(error.code) : '';
}
