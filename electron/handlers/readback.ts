import { InkDevice } from '../../db/types/sample.ts';
import { ScreenScale } from '../../db/types/screen-scale.ts';
import { scaleOfPenScreen } from '../../renderer/logic/readback/true-size.ts';
import type { readbackRequests } from '../contract/readback.ts';
import type { Handler } from './handler.ts';
import { saveFact } from './saving.ts';

const SCREEN_SETTING = 'screen-scale';
const INK_SETTING = 'ink-device';

export const readbackHandlers: { [N in keyof typeof readbackRequests]: Handler<N> } = {
  'reading.save': saveFact('reading'),

  'readback.screen': (services) => {
    const own = ScreenScale.safeParse(services.need().setting(SCREEN_SETTING));
    if (own.success) return { scale: own.data };
    const pen = InkDevice.safeParse(services.need().setting(INK_SETTING));
    // A screen set up for the pen may have no size that a screen can have.
    const scale = ScreenScale.safeParse(pen.success ? scaleOfPenScreen(pen.data) : null);
    return { scale: scale.success ? scale.data : null };
  },

  'readback.setScreen': (services, { scale }) => {
    services.need().putSetting(SCREEN_SETTING, scale, services.doing());
    return { scale };
  },

  'readback.textsMet': (services, { initials }) => ({ met: services.need().textsMetBy(initials) }),
};
