/** The menu: what the system itself expects (copying, zoom, closing). Everything of Fairhand's own is in the window. */
import { Menu } from 'electron';
import type { MenuItemConstructorOptions } from 'electron';

function menuTemplate(platform: string): MenuItemConstructorOptions[] {
  const app: MenuItemConstructorOptions[] = platform === 'darwin' ? [{ role: 'appMenu' }] : [];
  const view: MenuItemConstructorOptions = {
    label: 'View',
    submenu: [
      { role: 'resetZoom' },
      { role: 'zoomIn' },
      { role: 'zoomOut' },
      { type: 'separator' },
      { role: 'togglefullscreen' },
    ],
  };
  return [...app, { role: 'editMenu' }, view, { label: 'Window', submenu: [{ role: 'minimize' }, { role: 'close' }] }];
}

export function setupMenu(platform: string): void {
  Menu.setApplicationMenu(Menu.buildFromTemplate(menuTemplate(platform)));
}
