import qrcode from 'qrcode-generator';
import type { Html } from './html.ts';

/** White modules around a QR code (ISO/IEC 18004 asks for four; from memory). */
const QUIET = 4;

/** The dark modules of a QR code of a text, row by row; level M, the smallest version that holds it. */
export function qrModules(text: string): boolean[][] {
  const code = qrcode(0, 'M');
  code.addData(text, 'Byte');
  code.make();
  const size = code.getModuleCount();
  return Array.from({ length: size }, (_, row) =>
    Array.from({ length: size }, (__, column) => code.isDark(row, column)),
  );
}

/** A QR code of a text as an SVG path on a square of `size` by `size`, its quiet zone in it. */
export function qrPath(text: string): { readonly path: string; readonly size: number } {
  const modules = qrModules(text);
  const path = modules
    .flatMap((row, y) => row.map((dark, x) => (dark ? `M${x + QUIET} ${y + QUIET}h1v1h-1z` : '')))
    .join('');
  return { path, size: modules.length + 2 * QUIET };
}

/** A QR code of a text as a drawing, with its quiet zone. */
export function qrCode(text: string): Html {
  const { path, size } = qrPath(text);
  return {
    html: `<svg class="qr" viewBox="0 0 ${size} ${size}" shape-rendering="crispEdges" role="img"><path d="${path}"/></svg>`,
  };
}
