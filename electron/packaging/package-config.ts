import type { Configuration } from 'electron-builder';

/**
 * How the desktop program is packed for each system. What is built is packed, never sources: the driver of
 * the database is the one package that is not already in the built programs.
 */
export const packageConfig: Configuration = {
  appId: 'undertrim.desktop',
  productName: 'Undertrim',
  copyright: 'MIT licence; see LICENSE',
  directories: { output: 'electron/built/packages', buildResources: 'electron/packaging' },
  files: [
    'package.json',
    'LICENSE',
    'electron/built/desktop/*',
    'renderer/built/**/*',
    'sample-vehicles/*.json',
    '!node_modules/!(better-sqlite3)/**',
    '!node_modules/@*/**',
    '!node_modules/better-sqlite3/{deps,src,binding.gyp,README.md}',
    '!node_modules/better-sqlite3/{deps,src}/**',
    // Of the driver's compiled parts the one for this system and processor, and no other.
    // biome-ignore lint/suspicious/noTemplateCurlyInString: the packer fills these in.
    '!node_modules/better-sqlite3/prebuilds/!(${platform}-${arch}).node',
  ],
  asar: { smartUnpack: false },
  // A compiled part is loaded by the system, which cannot look into the archive.
  asarUnpack: ['node_modules/better-sqlite3/prebuilds/*.node'],
  // The driver brings its compiled parts along; nothing is compiled here.
  npmRebuild: false,
  nodeGypRebuild: false,
  // The security checklist's fuses: the packed program runs its own archive and nothing else.
  electronFuses: {
    runAsNode: false,
    enableCookieEncryption: true,
    enableNodeOptionsEnvironmentVariable: false,
    enableNodeCliInspectArguments: false,
    enableEmbeddedAsarIntegrityValidation: true,
    onlyLoadAppFromAsar: true,
    // There is no snapshot of our own to load.
    loadBrowserProcessSpecificV8Snapshot: false,
    grantFileProtocolExtraPrivileges: false,
    resetAdHocDarwinSignature: true,
  },
  electronLanguages: ['en'],
  // Nothing is sent anywhere and nothing updates itself: a workshop's machine is often without a network.
  publish: null,
  releaseInfo: { releaseNotesFile: 'electron/packaging/release-notes.md' },
  // biome-ignore lint/suspicious/noTemplateCurlyInString: the packer fills these in.
  artifactName: 'undertrim-${version}-${os}-${arch}.${ext}',
  win: {
    target: [{ target: 'nsis', arch: ['x64', 'arm64'] }],
    icon: 'electron/packaging/icon.ico',
  },
  nsis: {
    oneClick: false,
    perMachine: false,
    allowToChangeInstallationDirectory: true,
    differentialPackage: false,
  },
  mac: {
    target: [{ target: 'dmg', arch: ['x64', 'arm64'] }],
    icon: 'electron/packaging/icon.icns',
    category: 'public.app-category.utilities',
    darkModeSupport: true,
    hardenedRuntime: true,
  },
  dmg: { writeUpdateInfo: false },
  linux: {
    target: [
      { target: 'AppImage', arch: ['x64', 'arm64'] },
      { target: 'tar.gz', arch: ['x64', 'arm64'] },
    ],
    icon: 'electron/packaging/icons',
    category: 'Utility',
    synopsis: 'Finds where a hidden wire has chafed through',
    executableName: 'undertrim',
  },
};
