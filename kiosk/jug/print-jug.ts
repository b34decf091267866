/** Leaves for the page that prints the label and the dose tables of a jug; its plate leads back. */
export function printJug(jugId: string): void {
  location.assign(`/print/jug/${encodeURIComponent(jugId)}`);
}
