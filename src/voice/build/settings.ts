/** How the voice is spoken and shaped. What each choice was measured to bring is in README.md. */
export interface VoiceSettings {
  /** Voice of flite, or `festival` for its us-slt HTS voice. */
  readonly voice: string;
  /** Length of every sound against the engine's own pace. */
  readonly stretch: number;
  /** Below this nothing is left: it carries no words, and takes room from what does. */
  readonly highPassHz: number;
  /** Lift of everything above the corner: consonants live there, and wind and traffic do not. */
  readonly trebleDb: number;
  readonly trebleHz: number;
  readonly ratio: number;
  readonly attackS: number;
  readonly releaseS: number;
  /** Loudness of a clip, LUFS of one channel (BS.1770), and of a tone. */
  readonly speechLufs: number;
  readonly toneLufs: number;
  /** Decoded peaks stay below this; true peaks (between samples) are up to half a decibel above. */
  readonly peakDb: number;
}

export const SETTINGS: VoiceSettings = {
  voice: 'slt',
  stretch: 1,
  highPassHz: 500,
  trebleDb: 15,
  trebleHz: 2500,
  ratio: 3,
  attackS: 0.003,
  releaseS: 0.1,
  speechLufs: -16,
  toneLufs: -16.5,
  peakDb: -1.8,
};
