import { expect, test } from 'vitest';
import { keyName } from '../../renderer/window/frame/key-name.ts';

const none = { ctrlKey: false, metaKey: false, altKey: false, shiftKey: false };
test.each([
  [{ key: 'k', code: 'KeyK', ctrlKey: true }, 'Ctrl+K'],
  [{ key: 'Z', code: 'KeyZ', ctrlKey: true, shiftKey: true }, 'Ctrl+Shift+Z'],
  // French layouts type & on the key of the 1.
  [{ key: '&', code: 'Digit1', altKey: true }, 'Alt+1'],
  [{ key: 'F7', code: 'F7' }, 'F7'],
  [{ key: 'j', code: 'KeyJ' }, ''],
  [{ key: 'Control', code: 'ControlLeft', ctrlKey: true }, null],
])('%o', (pressed, name) => {
  expect(keyName({ ...none, ...pressed })).toBe(name);
});
