/** What the Chromium window is started with: its switches and the settings of its profile. */
import type { WindowSize } from '../window-size.ts';

/**
 * Switches of the window. It is a private one: what is typed and shown stays in memory, no session, history, form or
 * cache is written. Names never resolve and no proxy is asked, so that even a mistake cannot reach a network.
 */
export function switches(size: WindowSize): string[] {
  return [
    '--app=data:text/html,<title>Fairhand</title>',
    // Chromium and Chrome; Edge has a word of its own. Each passes over the other's.
    '--incognito',
    '--inprivate',
    '--test-type',
    `--window-size=${size.width},${size.height}`,
    '--window-position=0,0',
    '--host-resolver-rules=MAP * ~NOTFOUND',
    '--no-proxy-server',
    '--disable-quic',
    '--disable-domain-reliability',
    '--disable-background-networking',
    '--disable-component-update',
    '--disable-sync',
    '--disable-breakpad',
    '--disable-crash-reporter',
    '--disable-extensions',
    '--disable-logging',
    '--no-default-browser-check',
    '--no-first-run',
    '--no-pings',
    '--metrics-recording-only',
    '--disk-cache-size=1',
    '--media-cache-size=1',
    '--disable-gpu-shader-disk-cache',
    '--disable-spell-checking',
    '--disable-session-crashed-bubble',
    '--password-store=basic',
    '--disable-features=Translate,MediaRouter,OptimizationHints,AutofillServerCommunication,InterestFeedContentSuggestions,GlobalMediaControls',
  ];
}

/** Rights that a page could ask for, by Chromium's names: all refused without asking. 2: block. */
function denied(): Record<string, 2> {
  const rights =
    'media_stream_mic geolocation notifications midi_sysex sensors idle_detection local_fonts window_placement clipboard popups automatic_downloads background_sync payment_handler protocol_handlers bluetooth_guard usb_guard serial_guard hid_guard ar vr storage_access';
  return Object.fromEntries(rights.split(' ').map((right) => [right, 2]));
}

/**
 * Chromium's own settings for the profile: it fills in no forms, keeps no passwords, offers no translation, restores
 * no session and looks nothing up, so that nothing a therapist types is kept outside the caseload.
 */
export const PREFERENCES = {
  autofill: { enabled: false, profile_enabled: false, credit_card_enabled: false },
  credentials_enable_service: false,
  credentials_enable_autosignin: false,
  profile: { password_manager_enabled: false, default_content_setting_values: denied() },
  translate: { enabled: false },
  search: { suggest_enabled: false },
  // 5: a new page, nothing of the last session.
  session: { restore_on_startup: 5 },
  browser: { enable_spellchecking: false, show_update_promotion_info_bar: false },
  spellcheck: { dictionaries: [], use_spelling_service: false },
  safebrowsing: { enabled: false },
  alternate_error_pages: { enabled: false },
  net: { network_prediction_options: 2 },
} as const;
