/** Answers the page's permission requests and checks by the window's policy. */
import type { Session } from 'electron';
import type { CameraTicket } from '../window-policy.ts';
import { ELECTRON_ORIGIN, mayUse } from '../window-policy.ts';

/** Requests use a camera ticket up; checks only look at it. Devices, serial ports and the like are never given. */
export function setupPermissions(session: Session, ticket: CameraTicket): void {
  session.setPermissionRequestHandler((_contents, permission, callback, details) => {
    const mediaTypes = 'mediaTypes' in details ? details.mediaTypes : undefined;
    const granted = mayUse(
      permission,
      { url: details.requestingUrl, isMainFrame: details.isMainFrame, mediaTypes },
      ticket,
      ELECTRON_ORIGIN,
    );
    if (granted && permission === 'media') ticket.open = false;
    callback(granted);
  });
  session.setPermissionCheckHandler((_contents, permission, _origin, details) =>
    mayUse(
      permission,
      {
        url: details.requestingUrl ?? '',
        isMainFrame: details.isMainFrame,
        mediaTypes: details.mediaType ? [details.mediaType] : undefined,
      },
      ticket,
      ELECTRON_ORIGIN,
    ),
  );
  session.setDevicePermissionHandler(() => false);
}
