/** What the tests use of the parser, which comes without types. */
declare module 'webvtt-parser' {
  export interface WebVTTNode {
    readonly type: 'object' | 'text' | 'timestamp';
    readonly value?: string;
    readonly children?: readonly WebVTTNode[];
  }
  export interface WebVTTParsedCue {
    readonly id: string;
    readonly startTime: number;
    readonly endTime: number;
    readonly tree: WebVTTNode;
  }
  export class WebVTTParser {
    constructor(entities?: Readonly<Record<string, string>>);
    parse(
      input: string,
      mode: 'captions' | 'metadata',
    ): {
      readonly cues: readonly WebVTTParsedCue[];
      readonly errors: readonly { message: string }[];
    };
  }
}
