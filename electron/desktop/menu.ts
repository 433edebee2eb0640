/** The menu: what the system itself expects (copying, zoom, closing). Everything of Fairhand's own is in the window. */
import type { Told } from '../../renderer/logic/texts/screens/en/screens-en.ts';
import { Menu } from 'electron';
import type { MenuItemConstructorOptions } from 'electron';

function menuTemplate(platform: string, words: Told['system']): MenuItemConstructorOptions[] {
  const app: MenuItemConstructorOptions[] = platform === 'darwin' ? [{ role: 'appMenu' }] : [];
  const view: MenuItemConstructorOptions = {
    label: words.view,
    submenu: [
      { role: 'resetZoom' },
      { role: 'zoomIn' },
      { role: 'zoomOut' },
      { type: 'separator' },
      { role: 'togglefullscreen' },
    ],
  };
  return [
    ...app,
    { role: 'editMenu' },
    view,
    { label: words.window, submenu: [{ role: 'minimize' }, { role: 'close' }] },
  ];
}

export function setupMenu(platform: string, words: Told['system']): void {
  Menu.setApplicationMenu(Menu.buildFromTemplate(menuTemplate(platform, words)));
}
