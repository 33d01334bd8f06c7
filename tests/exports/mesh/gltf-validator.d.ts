/** The function of the Khronos validator that the tests use. */
declare module 'gltf-validator' {
  interface Report {
    readonly issues: { readonly messages: readonly { readonly code: string; readonly pointer?: string }[] };
    readonly info: { readonly drawCallCount: number };
  }
  export function validateBytes(bytes: Uint8Array): Promise<Report>;
}
