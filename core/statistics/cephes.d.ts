// The package carries its types where its list of exports hides them from the compiler; these are the functions used here.
declare module 'cephes' {
  /** Settles once the functions may be called. */
  export const compiled: Promise<void>;
  export function igam(shape: number, x: number): number;
  export function igami(shape: number, upperTail: number): number;
  export function incbi(alpha: number, beta: number, p: number): number;
  export function lgam(x: number): number;
  export function ndtri(p: number): number;
  export function stdtri(freedom: number, p: number): number;
}
