import manifest from '../../package.json' with { type: 'json' };

/** The version in package.json. */
export function version(): string {
  return manifest.version;
}
