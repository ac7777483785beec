/** How the voice is spoken and shaped. What each choice was measured to bring is in README.md. */
export interface VoiceSettings {
  /** Voice of flite. */
  readonly voice: string;
  /** Length of every sound against the engine's own pace. */
  readonly stretch: number;
  /**
   * Share of its own speed at which the speech is played: pitch and resonances fall together, as
   * in a larger person's voice. (The pace is kept by `stretch`.)
   */
  readonly deepen: number;
  /** Below this nothing is left: it carries no words, and takes room from what does. */
  readonly highPassHz: number;
  /** Lift of everything above the corner: consonants live there, and wind and traffic do not. */
  readonly trebleDb: number;
  readonly trebleHz: number;
  /** Above this corner part of the lift is taken back: sharpness of "s" that no word needs. */
  readonly softenDb: number;
  readonly softenHz: number;
  readonly ratio: number;
  readonly attackS: number;
  readonly releaseS: number;
  /** Loudness of a clip, LUFS of one channel (BS.1770), and of a tone. */
  readonly speechLufs: number;
  readonly toneLufs: number;
  /** Decoded peaks stay below this; true peaks (between samples) are up to half a decibel above. */
  readonly peakDb: number;
}

/** How the pack that is committed was made. */
export const SETTINGS: VoiceSettings = {
  voice: 'slt',
  stretch: 0.95,
  deepen: 0.9,
  highPassHz: 500,
  trebleDb: 10,
  trebleHz: 1300,
  softenDb: -6,
  softenHz: 5500,
  ratio: 3,
  attackS: 0.003,
  releaseS: 0.1,
  speechLufs: -16,
  toneLufs: -16.2,
  peakDb: -1.8,
};
