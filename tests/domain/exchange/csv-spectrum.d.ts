/** What the tests use of the files, which come without types. */
declare module 'csv-spectrum' {
  interface SpectrumFile {
    readonly name: string;
    readonly csv: Buffer;
    readonly json: Buffer;
  }
  export default function spectrum(
    done: (error: Error | null, files: readonly SpectrumFile[]) => void,
  ): void;
}
