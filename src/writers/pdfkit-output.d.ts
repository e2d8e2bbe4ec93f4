/** What the project uses of `pdfkit/output`, which comes without types. */
declare module 'pdfkit/output' {
  /** All bytes of a document; `end()` must be called on it afterwards. */
  export function toBytes(document: object): Promise<Uint8Array>
}
