/** Stands in for Electron: records every option and handler, so that the adapter can be tested without its program. */
type Listener = (...args: never[]) => unknown;

export class Listens {
  readonly listeners = new Map<string, Listener>();
  on(name: string, listener: Listener): this {
    this.listeners.set(name, listener);
    return this;
  }
  once(name: string, listener: Listener): this {
    return this.on(name, listener);
  }
  fire(name: string, ...args: unknown[]): unknown {
    return (this.listeners.get(name) as ((...given: unknown[]) => unknown) | undefined)?.(...args);
  }
}

export class FakeContents extends Listens {
  openHandler: ((details: { url: string }) => { action: string }) | null = null;
  sent: unknown[][] = [];
  printed: unknown = null;
  printAnswer: [boolean, string] = [true, ''];
  setWindowOpenHandler(handler: (details: { url: string }) => { action: string }): void {
    this.openHandler = handler;
  }
  reloads = 0;
  reload(): void {
    this.reloads++;
  }
  send(...args: unknown[]): void {
    this.sent.push(args);
  }
  async printToPDF(options: unknown): Promise<Buffer> {
    this.printed = options;
    return Buffer.from('%PDF-1.4');
  }
  print(options: unknown, done: (ok: boolean, reason: string) => void): void {
    this.printed = options;
    done(...this.printAnswer);
  }
}

export class BrowserWindow extends Listens {
  static made: BrowserWindow[] = [];
  readonly webContents = new FakeContents();
  readonly options: Record<string, unknown>;
  calls: string[] = [];
  destroyed = false;
  loaded = '';
  constructor(options: Record<string, unknown>) {
    super();
    this.options = options;
    BrowserWindow.made.push(this);
  }
  show = () => void this.calls.push('show');
  focus = () => void this.calls.push('focus');
  restore = () => void this.calls.push('restore');
  close = () => void this.calls.push('close');
  isMinimized = () => true;
  isDestroyed = () => this.destroyed;
  getSize = () => [1000, 700];
  loadURL = async (url: string) => {
    this.loaded = url;
  };
}

export class FakeSession extends Listens {
  persistent = false;
  spellChecker = true;
  isPersistent = () => this.persistent;
  setSpellCheckerEnabled = (on: boolean) => void (this.spellChecker = on);
  schemes = new Map<string, (request: Request) => Promise<Response>>();
  protocol = {
    handle: (scheme: string, handler: (request: Request) => Promise<Response>) =>
      void this.schemes.set(scheme, handler),
  };
  before: ((details: { url: string }, callback: (answer: { cancel: boolean }) => void) => void) | null = null;
  webRequest = {
    onBeforeRequest: (handler: NonNullable<FakeSession['before']>) => {
      this.before = handler;
    },
  };
  request: ((...args: unknown[]) => void) | null = null;
  check: ((...args: unknown[]) => boolean) | null = null;
  device: ((...args: unknown[]) => boolean) | null = null;
  setPermissionRequestHandler = (handler: (...args: unknown[]) => void) => void (this.request = handler);
  setPermissionCheckHandler = (handler: (...args: unknown[]) => boolean) => void (this.check = handler);
  setDevicePermissionHandler = (handler: (...args: unknown[]) => boolean) => void (this.device = handler);
}

export const theSession = new FakeSession();
export const session = {
  asked: '',
  options: {} as unknown,
  fromPartition: (name: string, options: unknown) => {
    session.asked = name;
    session.options = options;
    // As Electron: only names with this beginning are kept on disk.
    theSession.persistent = name.startsWith('persist:');
    return theSession;
  },
};

export const privileged: unknown[] = [];
export const protocol = { registerSchemesAsPrivileged: (schemes: unknown[]) => void privileged.push(...schemes) };

export const ipcMain = {
  handlers: new Map<string, (event: unknown, ...args: unknown[]) => Promise<unknown>>(),
  handle(name: string, handler: (event: unknown, ...args: unknown[]) => Promise<unknown>): void {
    this.handlers.set(name, handler);
  },
};

export const ipcRenderer = Object.assign(new Listens(), {
  invoked: [] as unknown[][],
  invoke: async (...args: unknown[]) => {
    ipcRenderer.invoked.push(args);
    return 'answer';
  },
});

export const contextBridge = {
  exposed: new Map<string, Record<string, unknown>>(),
  exposeInMainWorld(name: string, value: Record<string, unknown>): void {
    this.exposed.set(name, value);
  },
};

export const safeStorage = {
  available: true,
  backend: 'gnome_libsecret',
  calls: [] as string[],
  isAsyncEncryptionAvailable: async () => (safeStorage.calls.push('available?'), safeStorage.available),
  getSelectedStorageBackend: () => safeStorage.backend,
  encryptStringAsync: async (text: string) => Buffer.from(`sealed ${text}`),
  decryptStringAsync: async (sealed: Buffer) => ({ shouldReEncrypt: false, result: sealed.toString().slice(7) }),
};

export const powerMonitor = new Listens();

export const dialog = {
  open: { canceled: true, filePaths: [] as string[] },
  save: { canceled: true, filePath: '' },
  boxes: [] as string[][],
  showOpenDialog: async () => dialog.open,
  showSaveDialog: async () => dialog.save,
  answer: 0,
  showMessageBoxSync: () => dialog.answer,
  showErrorBox: (...text: string[]) => void dialog.boxes.push(text),
};

export const Menu = {
  template: null as unknown,
  buildFromTemplate: (template: unknown) => template,
  setApplicationMenu: (menu: unknown) => void (Menu.template = menu),
};

class App extends Listens {
  calls: string[] = [];
  paths = new Map<string, string>();
  appPath = '';
  enableSandbox = () => void this.calls.push('enableSandbox');
  setPath = (name: string, place: string) => void this.paths.set(name, place);
  whenReady = async () => void this.calls.push('ready');
  quit = () => void this.calls.push('quit');
  exit = () => void this.calls.push('exit');
  switches = new Map<string, string | undefined>();
  commandLine = { appendSwitch: (name: string, value?: string) => void this.switches.set(name, value) };
  getAppPath = () => this.appPath;
}
export const app = new App();
