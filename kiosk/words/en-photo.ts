/** English words of taking the photo of an animal. */
export const enPhoto = {
  title: (name: string) => `${name}: its photo`,
  take: 'Take it',
  keep: 'Keep it',
  again: 'Once more',
  none: 'No photo',
  failed: 'It was not kept: try again',
  camera: {
    opening: 'The camera is opening…',
    none: 'No camera. Plug one in at the kiosk, then open this screen again.',
    forbidden: 'The browser keeps the camera from this page. Use the screen of the kiosk itself.',
    broken: 'The camera does not start. Pull it out, plug it in again, then open this screen again.',
  },
};
