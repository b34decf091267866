/** Where the camera of the kiosk stands. */
export type Camera =
  | { readonly at: 'opening' }
  | { readonly at: 'ready'; readonly stream: MediaStream; readonly stop: () => void }
  /** None is plugged in, the browser keeps it from the page, or it did not start. */
  | { readonly at: 'none' | 'forbidden' | 'broken' };

/** The widest picture kept, in pixels: enough for a page of the largest panel, some 60 kB. */
export const WIDEST = 640;

/** Opens the camera that faces the animal; never throws. `devices` is undefined where the page may use none. */
export async function openCamera(
  devices: Pick<MediaDevices, 'enumerateDevices' | 'getUserMedia'> | undefined,
): Promise<Camera> {
  if (devices === undefined) return { at: 'forbidden' };
  try {
    const found = await devices.enumerateDevices();
    if (!found.some(({ kind }) => kind === 'videoinput')) return { at: 'none' };
    const stream = await devices.getUserMedia({
      audio: false,
      video: { width: { ideal: WIDEST }, facingMode: { ideal: 'environment' } },
    });
    return { at: 'ready', stream, stop: () => stream.getTracks().forEach((track) => void track.stop()) };
  } catch (error) {
    const why = error instanceof DOMException ? error.name : '';
    return { at: why === 'NotAllowedError' || why === 'SecurityError' ? 'forbidden' : 'broken' };
  }
}

/** The size of a picture of such a size, no wider than {@link WIDEST} and never made larger; whole pixels. */
export function fitted(width: number, height: number): { readonly width: number; readonly height: number } {
  const scale = Math.min(1, WIDEST / Math.max(width, height));
  return { width: Math.max(1, Math.round(width * scale)), height: Math.max(1, Math.round(height * scale)) };
}

/** Draws what the camera shows now; whether it could. */
export function smallPicture(video: HTMLVideoElement, canvas: HTMLCanvasElement): boolean {
  const { width, height } = fitted(video.videoWidth, video.videoHeight);
  canvas.width = width;
  canvas.height = height;
  const context = canvas.getContext('2d');
  context?.drawImage(video, 0, 0, width, height);
  return context !== null;
}
