/** The standard's validator ships no types of its own. */
declare module 'gltf-validator' {
  export function validateBytes(bytes: Uint8Array): Promise<unknown>;
}
